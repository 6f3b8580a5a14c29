using System.Globalization;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Configuration;

/// <summary>The settings that whoever runs the server can make in the environment.</summary>
public sealed class Settings
{
    /// <summary>Every name that is read; the start warns about any other PRICEFLOOR_ name.</summary>
    public static readonly IReadOnlyDictionary<string, string> Names = new Dictionary<string, string>(Secrets.Names, StringComparer.OrdinalIgnoreCase)
    {
        ["PRICEFLOOR_DATA"] = "Folder of the store; ./data by default.",
        ["PRICEFLOOR_STUDIOS"] = "many to serve many studios, each in a file of its own below PRICEFLOOR_DATA, "
            + "or in rows of its own in a database; one by default.",
        ["PRICEFLOOR_STUDIOS_OPEN_BYTES"] = "With many studios, bytes of the studios that stay open; 134217728 by default.",
        [StoreChoice.Fresh] = "How a process hears what others write to a database: ask (the default), before each answer; or every so many "
            + "milliseconds, and an answer may be as old.",
        [StoreChoice.Failover] = "Whether a standby of the database that takes over may lack what was acknowledged: lossy (the default), so what "
            + "callers hold from before is refused; or synchronous.",
        ["PRICEFLOOR_CORS_ORIGINS"] = "Origins whose web pages may call, separated by commas; none by default.",
        [TrustedProxies.Setting] =
            "Addresses and networks (192.0.2.0/24) of reverse proxies whose X-Forwarded headers are trusted, separated by commas.",
        ["PRICEFLOOR_PATH_BASE"] = "A path that a reverse proxy puts before ours, such as /pricefloor.",
        ["PRICEFLOOR_METRICS"] = "on to answer /metrics to keys that may check; off by default.",
        ["PRICEFLOOR_REQUESTS_PER_MINUTE"] = "Requests a minute for each key; 60000 by default.",
        ["PRICEFLOOR_BACKUP_EVERY_HOURS"] = "Hours between backups into backups/ in the data folder; none if 0 or not set.",
        ["PRICEFLOOR_BACKUPS_KEPT"] = "Backups that are kept there after a scheduled one, itself included; 14 by default.",
        ["PRICEFLOOR_WRONG_KEYS_PER_MINUTE"] = "Wrong keys a minute from each address; 20 by default.",
        ["PRICEFLOOR_BODY_BYTES"] = "Bytes of a document, a question or a JSON array of checks; 2097152 by default.",
        ["PRICEFLOOR_BATCH_BYTES"] = "Bytes of designs or listed prices that are stored together; 33554432 by default.",
        ["PRICEFLOOR_BATCHES_AT_ONCE"] = "Batches of one key that run at the same time; 4 by default.",
        ["PRICEFLOOR_CONNECTIONS"] = "Connections at the same time; 1000 by default.",
        ["PRICEFLOOR_CONNECTIONS_PER_ADDRESS"] =
            "Connections at the same time from one address; 200 by default; not counted behind trusted proxies.",
        ["PRICEFLOOR_PUT_BY_BYTES"] =
            "Bytes of batches' answers that wait in files of the data folder for callers to read them; 1073741824 by default.",
        ["PRICEFLOOR_ANSWER_SECONDS"] = "Seconds in which a caller must take the next 16 KiB of an answer; 30 by default.",
        ["PRICEFLOOR_HEADER_SECONDS"] = "Seconds in which a request's headers must have come; 15 by default.",
        ["PRICEFLOOR_LEAST_BYTES_PER_SECOND"] = "Bytes a second that a caller must send or take, after 5 seconds of grace; 240 by default.",
    };

    /// <summary>A random key of 32 hexadecimal digits has fewer different ones in 1 of 300,000 cases.</summary>
    private const int LeastDifferent = 8;

    private Settings() { }

    public string DataFolder { get; private init; } = "data";

    /// <summary>The operator's own first key.</summary>
    public Secret? AdminKey { get; private init; }

    public IReadOnlyList<string> CorsOrigins { get; private init; } = [];

    public TrustedProxies TrustedProxies { get; private init; } = TrustedProxies.Read([]);

    public string PathBase { get; private init; } = "";

    public bool Metrics { get; private init; }

    public int RequestsPerMinute { get; private init; }

    public int WrongKeysPerMinute { get; private init; }

    public int BodyBytes { get; private init; }

    public int BatchBytes { get; private init; }

    public int BatchesAtOnce { get; private init; }

    public int Connections { get; private init; }

    public int ConnectionsPerAddress { get; private init; }

    public int PutByBytes { get; private init; }

    public int AnswerSeconds { get; private init; }

    public int HeaderSeconds { get; private init; }

    public int LeastBytesPerSecond { get; private init; }

    public int BackupEveryHours { get; private init; }

    public int BackupsKept { get; private init; } = 14;

    public bool Demo { get; private init; }

    /// <summary>Whether the service has many studios, and its own store is that of their host.</summary>
    public bool HasManyStudios { get; private init; }

    public int StudiosOpenBytes { get; private init; }

    /// <summary>Where the store is, and what keeps it.</summary>
    public required StorePlace Store { get; init; }

    /// <summary>Reads the settings; an invalid value is refused with its name.</summary>
    public static Settings Read(IConfiguration configuration, bool demo) => Checked(new()
    {
        DataFolder = FolderOf(configuration),
        Store = StoreChoice.Read(configuration, FolderOf(configuration)),
        AdminKey = AdminKeyOf(configuration),
        CorsOrigins = Split(configuration, "PRICEFLOOR_CORS_ORIGINS"),
        TrustedProxies = TrustedProxies.Read(Split(configuration, TrustedProxies.Setting)),
        PathBase = Value(configuration, "PRICEFLOOR_PATH_BASE") is { } path
            ? (path.StartsWith('/') ? path.TrimEnd('/') : throw new SettingsException("PRICEFLOOR_PATH_BASE must start with a slash."))
            : "",
        BackupEveryHours = Integer(configuration, "PRICEFLOOR_BACKUP_EVERY_HOURS", 0, 1000, 0),
        BackupsKept = Integer(configuration, "PRICEFLOOR_BACKUPS_KEPT", 1, 100_000, 14),
        Metrics = Value(configuration, "PRICEFLOOR_METRICS") switch
        {
            null or "off" => false,
            "on" => true,
            _ => throw new SettingsException("PRICEFLOOR_METRICS must be on or off."),
        },
        RequestsPerMinute = Integer(configuration, "PRICEFLOOR_REQUESTS_PER_MINUTE", 60_000),
        WrongKeysPerMinute = Integer(configuration, "PRICEFLOOR_WRONG_KEYS_PER_MINUTE", 20),
        BodyBytes = Integer(configuration, "PRICEFLOOR_BODY_BYTES", 2 * 1024 * 1024),
        BatchBytes = Integer(configuration, "PRICEFLOOR_BATCH_BYTES", 32 * 1024 * 1024),
        BatchesAtOnce = Integer(configuration, "PRICEFLOOR_BATCHES_AT_ONCE", 4),
        Connections = Integer(configuration, "PRICEFLOOR_CONNECTIONS", 1000),
        ConnectionsPerAddress = Integer(configuration, "PRICEFLOOR_CONNECTIONS_PER_ADDRESS", 200),
        PutByBytes = Integer(configuration, "PRICEFLOOR_PUT_BY_BYTES", 1, int.MaxValue, 1024 * 1024 * 1024),
        AnswerSeconds = Integer(configuration, "PRICEFLOOR_ANSWER_SECONDS", 1, 100_000_000, 30),
        HeaderSeconds = Integer(configuration, "PRICEFLOOR_HEADER_SECONDS", 15),
        LeastBytesPerSecond = Integer(configuration, "PRICEFLOOR_LEAST_BYTES_PER_SECOND", 240),
        HasManyStudios = Value(configuration, "PRICEFLOOR_STUDIOS") switch
        {
            null or "one" => false,
            "many" => true,
            _ => throw new SettingsException("PRICEFLOOR_STUDIOS must be one or many."),
        },
        StudiosOpenBytes = Integer(configuration, "PRICEFLOOR_STUDIOS_OPEN_BYTES", 1, int.MaxValue, 128 * 1024 * 1024),
        Demo = demo,
    });

    private static Settings Checked(Settings settings) => settings switch
    {
        { BackupEveryHours: > 0, Store.MakesBackups: false } => throw new SettingsException("PRICEFLOOR_BACKUP_EVERY_HOURS is for a store in a file. "
            + "The store is a database, whose server makes its own backups; set it to 0, or leave it out."),
        { HasManyStudios: true, Demo: true } => throw new SettingsException("--demo is for one studio; leave PRICEFLOOR_STUDIOS out."),
        _ => settings,
    };

    private static string FolderOf(IConfiguration configuration) => Value(configuration, "PRICEFLOOR_DATA") ?? "data";

    private static Secret? AdminKeyOf(IConfiguration configuration)
    {
        var secret = Secrets.Read(configuration, Secrets.AdminKey);
        return secret is null ? null : secret with { Value = Usable(secret.Value, secret.Setting) };
    }

    /// <summary>A key that cannot be guessed by trying the easy ones; the message never contains it.</summary>
    private static string Usable(string key, string name) =>
        key.Length is < 32 or > 200 || !key.All(letter => letter is > ' ' and <= '~')
            ? throw new SettingsException($"{name} must be 32 to 200 visible ASCII characters without spaces.")
        : key.Distinct().Count() is < LeastDifferent and var count ? throw new SettingsException(string.Create(CultureInfo.InvariantCulture,
            $"{name} has only {count} different characters; a key of 32 to 200 visible ASCII characters needs at least {LeastDifferent} "
            + $"different ones, or it is easily guessed."))
        : KeyText.IsMistyped(key) ? throw new SettingsException($"{name} looks like a key that the service makes, "
            + "but its last letters do not fit the others; copy it again, or choose a different one.")
        : key;

    private static IReadOnlyList<string> Split(IConfiguration configuration, string name) =>
        Value(configuration, name)?.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) ?? [];

    private static int Integer(IConfiguration configuration, string name, int fallback) => Integer(configuration, name, 1, 1_000_000_000, fallback);

    private static int Integer(IConfiguration configuration, string name, int least, int most, int fallback) =>
        Value(configuration, name) is not { } text ? fallback
            : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most ? number
            : throw new SettingsException(string.Create(CultureInfo.InvariantCulture, $"{name} must be a whole number from {least} to {most}."));

    private static string? Value(IConfiguration configuration, string name) => configuration[name] is { Length: > 0 } value ? value : null;
}

/// <summary>A setting cannot be used; the message names it.</summary>
public sealed class SettingsException(string message) : Exception(message);
