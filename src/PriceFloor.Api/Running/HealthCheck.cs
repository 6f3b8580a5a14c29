using PriceFloor.Api.Configuration;

namespace PriceFloor.Api.Running;

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
