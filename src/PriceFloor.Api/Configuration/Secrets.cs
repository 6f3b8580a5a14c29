namespace PriceFloor.Api.Configuration;

/// <summary>
/// Settings that must not be seen. Each can be in a file instead, which NAME_FILE names, so it is in no environment and no list of processes.
/// </summary>
public static class Secrets
{
    public const string AdminKey = "PRICEFLOOR_ADMIN_KEY";

    private const string File = "_FILE";

    private static readonly Dictionary<string, string> s_meanings = new()
    {
        [AdminKey] = "The first key of an empty store: 32 to 200 visible characters of your choice, at least 8 different ones.",
        [StoreChoice.Setting] = StoreChoice.Meaning,
    };

    /// <summary>Every name that is read: each secret and its file.</summary>
    public static IEnumerable<KeyValuePair<string, string>> Names => s_meanings.SelectMany(secret =>
        new[] { secret, new(secret.Key + File, $"A file that holds {secret.Key}; set one of the two.") });

    public static bool Is(string name) => s_meanings.ContainsKey(name);

    /// <summary>A secret and where it comes from; null if it is set in neither way.</summary>
    public static Secret? Read(IConfiguration configuration, string name)
    {
        var (value, path) = (NullIfEmpty(configuration[name]), NullIfEmpty(configuration[name + File]));
        if (value is not null && path is not null)
            throw new SettingsException($"{name} and {name}{File} are both set; set one of them, so it is clear which counts.");
        return value is not null ? new Secret(value, name, $"in {name}")
            : path is not null ? new Secret(InFile(path, name + File), name + File, $"in the file {path}")
            : null;
    }

    private static string? NullIfEmpty(string? text) => text is { Length: > 0 } ? text : null;

    private static string InFile(string path, string setting)
    {
        try
        {
            return System.IO.File.ReadAllText(path).Trim();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new SettingsException($"{setting}: {path} cannot be read: {e.Message}");
        }
    }
}

/// <summary>A secret as it was set.</summary>
/// <param name="Value">The secret itself.</param>
/// <param name="Setting">The name of the setting that it comes from.</param>
/// <param name="Place">Where it was set, in words that do not contain it.</param>
public sealed record Secret(string Value, string Setting, string Place);
