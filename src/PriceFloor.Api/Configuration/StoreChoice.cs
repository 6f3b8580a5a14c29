using PriceFloor.Storage;
using PriceFloor.Storage.Postgres;
using PriceFloor.Storage.Sqlite;

namespace PriceFloor.Api.Configuration;

/// <summary>Which kind of store the settings ask for: only here the service names one.</summary>
public static class StoreChoice
{
    public const string Setting = "PRICEFLOOR_STORE";

    /// <summary>For the list of settings.</summary>
    public const string Meaning = $"What keeps the store: sqlite (the default), one file in PRICEFLOOR_DATA; or a database of PostgreSQL: {Example}";

    private const int CacheOfStudio = 256;

    private const string File = "pricefloor.db", InFile = "sqlite", Example = "Host=db;Database=pricefloor;Username=pricefloor;Password=...";

    /// <summary>The schema to which this program brings a store in a file.</summary>
    public static int NewestSchema => StoreInFile.Schema;

    /// <summary>Loads the libraries of a store in a file, so opening it is faster.</summary>
    public static void LoadLibraries() => StoreInFile.LoadLibraries();

    /// <summary>The place that the settings name. A refusal does not repeat what was set: it may have a password in it.</summary>
    public static StorePlace Read(IConfiguration configuration, string folder)
    {
        var set = Secrets.Read(configuration, Setting);
        return set is null or { Value: InFile } ? new StoreInFile(Path.Combine(folder, File))
            : set.Value.Contains('=', StringComparison.Ordinal) ? OnServer(set)
            : throw new SettingsException($"{set.Setting} names a store that this program does not know. It knows {InFile}: one file, {File}, in the "
                + $"folder that PRICEFLOOR_DATA names; and a database of PostgreSQL: {Example}");
    }

    /// <summary>The place of one studio of many: its connections keep little, since there may be a thousand of them.</summary>
    public static StorePlace OfStudio(string folder) => new StoreInFile(Path.Combine(folder, File), CacheOfStudio);

    private static StorePlace OnServer(Secret set)
    {
        try
        {
            return new StoreOnServer(set.Value);
        }
        catch (StoreException e)
        {
            throw new SettingsException($"{set.Setting}: {e.Message}");
        }
    }
}
