using PriceFloor.Api.Configuration;

namespace PriceFloor.Api.Running;

/// <summary>What the program can do besides serving.</summary>
public static class Commands
{
    public const string Serve = "serve";
    public const string Help = "--help";
    public const string Version = "--version";
    public const string HealthCheck = "healthcheck";
    public const string OpenApi = "openapi";
    public const string OpenApiFiles = "openapi-files";

    /// <summary>Each verb, its arguments, and what it does.</summary>
    public static readonly IReadOnlyDictionary<string, (string[] Words, string Does)> All = new Dictionary<string, (string[], string)>
    {
        [HealthCheck] = ([], "asks a running service whether it is ready; exit code 0 or 1"),
        [OpenApi] = ([], "prints the OpenAPI document"),
        [OpenApiFiles] = (["FOLDER"], "writes it into a folder as the build does, whatever the settings are"),
        [StoreCommands.Backup] = (["FILE"], "copies the store to a new file, also while a service writes"),
        [StoreCommands.CheckStore] = ([], "checks the whole store, also while a service runs; exit code 0 or 1"),
        [StoreCommands.Restore] = (["FILE"], "checks a backup and puts it in the store's place; the service must be stopped"),
        [StoreCommands.Forget] = (["KIND", "KEY"], "erases a deleted document with all its revisions; the service must be stopped"),
        [StoreCommands.NewAdminKey] = ([], "makes a key with every scope, to replace a lost one; the service must be stopped"),
    };

    private static readonly (string Option, string Does)[] s_options =
    [
        ("--demo", "fills an empty store with an invented studio"),
        ("--urls=ADDRESS", $"where to listen; {Addresses.Usual} if not set"),
        ("--PRICEFLOOR_NAME=VALUE", "a setting, which is usually set in the environment (docs/reference/settings.md)"),
        (Help, "prints this; also -h"),
        (Version, "prints the version"),
    ];

    /// <summary>Prints the help or the version.</summary>
    public static int Tell(string verb, TextWriter output)
    {
        output.WriteLine(verb == Help ? HelpText() : FirstContact.Welcome.Version);
        return 0;
    }

    private static string HelpText() => $"""
        PriceFloor {FirstContact.Welcome.Version}: the lowest price that keeps a studio and its maker going for the year.

        It serves if no verb is given. Verbs:
        {Lines(All.Select(verb => (string.Join(' ', [verb.Key, .. verb.Value.Words]), verb.Value.Does)))}

        Options:
        {Lines(s_options)}
        """;

    private static string Lines(IEnumerable<(string Name, string Does)> rows) =>
        string.Join('\n', rows.Select(row => $"  {row.Name,-24} {row.Does}"));
}

/// <summary>Asks a running service whether it is ready: for a container's health check, without curl.</summary>
public static class HealthCheck
{
    public static async Task<int> RunAsync()
    {
        var configuration = new ConfigurationBuilder().AddEnvironmentVariables().AddEnvironmentVariables("ASPNETCORE_").Build();
        var address = (configuration["urls"]?.Split(';')[0] ?? Addresses.Usual).Replace("//+", "//127.0.0.1", StringComparison.Ordinal)
            .Replace("//*", "//127.0.0.1", StringComparison.Ordinal).Replace("//0.0.0.0", "//127.0.0.1", StringComparison.Ordinal);
        using var client = new HttpClient { Timeout = TimeSpan.FromSeconds(3) };
        try
        {
            using var response = await client.GetAsync(new Uri(new Uri(address), (configuration["PRICEFLOOR_PATH_BASE"] ?? "") + "/health/ready"));
            await Console.Out.WriteLineAsync(response.IsSuccessStatusCode ? "ready" : $"not ready: {(int)response.StatusCode}");
            return response.IsSuccessStatusCode ? 0 : 1;
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
        {
            await Console.Out.WriteLineAsync($"not ready: {e.Message}");
            return 1;
        }
    }
}
