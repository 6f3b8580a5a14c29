using System.Globalization;
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

    public const string Fresh = "PRICEFLOOR_STORE_FRESH", Failover = "PRICEFLOOR_STORE_FAILOVER";

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
        return set is null or { Value: InFile } ? InFolder(folder)
            : set.Value.Contains('=', StringComparison.Ordinal) ? OnServer(set, ChoicesOf(configuration))
            : throw new SettingsException($"{set.Setting} names a store that this program does not know. It knows {InFile}: one file, {File}, in the "
                + $"folder that PRICEFLOOR_DATA names; and a database of PostgreSQL: {Example}");
    }

    /// <summary>The file of a data folder.</summary>
    public static StorePlace InFolder(string folder) => new StoreInFile(Path.Combine(folder, File));

    /// <summary>
    /// The place of one studio of many: rows beside those of the host, or a file whose connections keep little, since there may be a thousand.
    /// </summary>
    /// <param name="host">The place of the host's store.</param>
    /// <param name="folder">The folder of the studio's file.</param>
    /// <param name="key">The key of the studio.</param>
    public static StorePlace OfStudio(StorePlace host, string folder, string key) =>
        host.HasRoomForStudios ? host.OfStudio(key) : new StoreInFile(Path.Combine(folder, File), CacheOfStudio);

    private static ServerChoices ChoicesOf(IConfiguration configuration) => new(
        configuration[Fresh] switch
        {
            null or "" or "ask" => null,
            var text when int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var pause) && pause is > 0 and <= 2000 =>
                TimeSpan.FromMilliseconds(pause),
            _ => throw new SettingsException($"{Fresh} must be ask, or a whole number of milliseconds from 1 to 2000."),
        },
        configuration[Failover] switch
        {
            null or "" or "lossy" => false,
            "synchronous" => true,
            _ => throw new SettingsException($"{Failover} must be lossy or synchronous."),
        });

    private static StorePlace OnServer(Secret set, ServerChoices choices)
    {
        try
        {
            return new StoreOnServer(set.Value, choices);
        }
        catch (StoreException e)
        {
            throw new SettingsException($"{set.Setting}: {e.Message}");
        }
    }
}
