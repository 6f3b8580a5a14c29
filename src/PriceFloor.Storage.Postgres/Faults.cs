namespace PriceFloor.Storage.Postgres;

/// <summary>Reports what keeps a database from being used as a store, so whoever runs the server can fix it.</summary>
internal static class Faults
{
    public static StoreException CannotOpen(string name, StoreTroubleException fault)
    {
        var said = fault.Message.Split('\n')[0]; // the rest is about the statement
        return DataFolder.Because(
            $"The store {name} cannot be opened: {said.TrimEnd('.')}. Check that the server runs and can be reached, and that the role in "
            + "PRICEFLOOR_STORE may use this database.", fault);
    }

    public static StoreException NotHere(string instead) =>
        new($"The store is a database of PostgreSQL, whose backups are the server's own. {instead}");
}
