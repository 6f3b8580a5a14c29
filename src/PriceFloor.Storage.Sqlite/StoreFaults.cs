namespace PriceFloor.Storage.Sqlite;

/// <summary>Reports what keeps a file from being used as a store, so whoever runs the server can fix it.</summary>
internal static class StoreFaults
{
    /// <summary>Why a store cannot be opened.</summary>
    public static StoreException CannotOpen(string path, Exception fault)
    {
        var full = Path.GetFullPath(path);
        return (fault as StoreTroubleException)?.Trouble switch
        {
            StoreTrouble.Damaged => NotAStore(full, fault.Message, fault),
            StoreTrouble.Full => DataFolder.Because(
                $"There is no space left for the store {full}, which {DataFolder.Asker} must write. Make room on its disk and start again.", fault),
            StoreTrouble.Busy => DataFolder.Because(
                $"The store {full} is locked by another program, so {DataFolder.Asker} cannot open it: {fault.Message} "
                + "Close what holds it (a database browser, a copying tool) and start again.", fault),
            StoreTrouble.Disk or StoreTrouble.Unexpected => DataFolder.Because(
                $"The store {full} cannot be opened by {DataFolder.Asker}: {fault.Message} "
                + "Check that its disk has space and no faults, and that the files beside it belong to this user too.", fault),
            _ => DataFolder.Refused(Path.GetDirectoryName(full)!, fault),
        };
    }

    public static StoreException NotAStore(string path, string why, Exception? fault = null) => new(
        $"The file {Path.GetFullPath(path)} is not a whole store of PriceFloor, as {DataFolder.Asker} reads it: {why} Nothing was changed. "
        + "Move it away and restore a backup with the verb \"restore FILE\", or start with another PRICEFLOOR_DATA.", fault!)
    {
        Trouble = DataFolder.TroubleOf(fault) ?? StoreTrouble.Damaged,
    };
}
