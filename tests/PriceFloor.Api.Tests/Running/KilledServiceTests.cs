using System.Globalization;
using System.Net;
using System.Text;
using PriceFloor.Storage;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>
/// The real service, killed while several callers write over HTTP and backups are made: after a restart it has every revision that it acknowledged,
/// as it was written. <c>PRICEFLOOR_CRASH_ROUNDS</c> sets how often, a tenth of that in tests/PriceFloor.Storage.Tests/CrashTests.
/// </summary>
public sealed class KilledServiceTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-killed-").FullName;
    private readonly AcknowledgedWrites _acknowledged = new();

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task What_the_service_acknowledged_is_there_when_it_is_started_again()
    {
        var rounds = int.Parse(Environment.GetEnvironmentVariable("PRICEFLOOR_CRASH_ROUNDS") ?? "50", CultureInfo.InvariantCulture) / 10;
        for (var round = 1; round <= rounds; round++)
        {
            using var service = Start(_folder, new Dictionary<string, string> { ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey }).WithoutItsOutput();
            await Ready(service);
            using var client = new HttpClient { BaseAddress = new Uri(service.Address) };
            client.DefaultRequestHeaders.Authorization = new("Bearer", Studio.AdminKey);
            if (round == 1)
                Assert.Equal(HttpStatusCode.Created, await Put(client, "/v1/profiles/main", Sample.SmallProfile));
            await _acknowledged.AreAllThere(client);
            await WriteUntilKilled(service, client);
        }

        Assert.True(_acknowledged.Count > rounds * 3, $"Only {_acknowledged.Count} writes were acknowledged.");
        Assert.Empty(StoreCheck.Of(Path.Combine(_folder, "pricefloor.db"), (_, _) => null).Faults);
        foreach (var backup in Directory.GetFiles(Path.Combine(_folder, "backups"), "*.db"))
            Assert.Empty(StoreCheck.Of(backup, (_, _) => null).Faults);
        TestContext.Current.TestOutputHelper?.WriteLine($"{rounds} kills of the service, {_acknowledged.Count} acknowledged writes, none lost.");
    }

    private async Task WriteUntilKilled(Started service, HttpClient client)
    {
        var writers = AcknowledgedWrites.Skus.Select(sku => WriteAgainAndAgain(client, sku)).Append(BackUpAgainAndAgain(client)).ToList();
        await Task.Delay(Random.Shared.Next(100, 900), Studio.Cancellation);
        service.Process.Kill();
        await Task.WhenAll(writers);
    }

    private async Task WriteAgainAndAgain(HttpClient client, string sku)
    {
        for (var minutes = 1; ; minutes = (minutes % 9000) + 1)
            try
            {
                Assert.InRange((await _acknowledged.Write(client, sku, minutes)).Status, 200, 201);
            }
            catch (HttpRequestException)
            {
                return; // killed
            }
    }

    private static async Task BackUpAgainAndAgain(HttpClient client)
    {
        while (true)
            try
            {
                using var answer = await client.PostAsync(new Uri("/v1/backups", UriKind.Relative), null, Studio.Cancellation);
                Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
            }
            catch (HttpRequestException)
            {
                return;
            }
    }

    private static async Task<HttpStatusCode> Put(HttpClient client, string path, string json)
    {
        using var body = new StringContent(json, Encoding.UTF8, "application/json");
        using var answer = await client.PutAsync(new Uri(path, UriKind.Relative), body, Studio.Cancellation);
        return answer.StatusCode;
    }
}
