namespace PriceFloor.Api.Running;

/// <summary>What the program can do besides serving.</summary>
public static class Verbs
{
    public const string Serve = "serve";
    public const string HealthCheck = "healthcheck";
    public const string OpenApi = "openapi";

    private static readonly string[] s_all = [HealthCheck, OpenApi, .. StoreVerbs.Words.Keys];

    /// <summary>The verb of a command line; one that is none is refused.</summary>
    public static string Of(IReadOnlyList<string> arguments) => arguments.FirstOrDefault(argument => !argument.StartsWith('-')) switch
    {
        null => Serve,
        var verb when s_all.Contains(verb) => verb,
        var verb when arguments.Any(argument => argument.StartsWith("--", StringComparison.Ordinal) && argument.Length > 2 && argument != "--demo") => Serve,
        var verb => throw new SettingsException($"\"{verb}\" is not a verb of this program; it has {string.Join(", ", s_all)}, and serves without one."),
    };

    /// <summary>The arguments that the web host reads itself, such as --urls.</summary>
    public static string[] HostArguments(IEnumerable<string> arguments) => [.. arguments.Where(argument => argument != "--demo" && !s_all.Contains(argument))];
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
