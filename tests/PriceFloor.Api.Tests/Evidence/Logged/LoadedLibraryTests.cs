using System.Net;
using System.Text;
using PriceFloor.Api.Tests.Running;
using Xunit;

namespace PriceFloor.Api.Tests.Evidence.Logged;

/// <summary>Whoever asks for prices only does not pay for statistics: their library is loaded with the first evidence.</summary>
public sealed class LoadedLibraryTests : IDisposable
{
    private const string Library = "MathNet.Numerics.dll";

    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-libraries-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task The_library_of_statistics_is_loaded_with_the_first_evidence_and_not_by_price_checks()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Only Linux says which files a process has loaded.");
        using var service = RealProgram.Start(_folder, new Dictionary<string, string> { ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey })
            .WithoutItsOutput();
        await RealProgram.Ready(service);
        using var client = new HttpClient { BaseAddress = new Uri(service.Address) };
        client.DefaultRequestHeaders.Authorization = new("Bearer", Studio.AdminKey);
        Assert.Equal(HttpStatusCode.Created, await Send(client, HttpMethod.Put, "/v1/profiles/main", Sample.SmallProfile));
        Assert.Equal(HttpStatusCode.Created, await Send(client, HttpMethod.Put, "/v1/designs/P", Sample.Pendant));
        Assert.Equal(HttpStatusCode.Created, await Send(client, HttpMethod.Put, "/v1/channels/web", Sample.Shop));
        Assert.Equal(HttpStatusCode.OK, await Send(client, HttpMethod.Post, "/v1/movements/batch?source=book", """
            [{"ref":"1","on":"2026-01-05","what":"made","sku":"P","pieces":12},
             {"ref":"2","on":"2026-02-05","what":"sold","sku":"P","channel":"web","pieces":3,"price":52.00}]
            """));
        for (var i = 0; i < 3; i++)
            Assert.Equal(HttpStatusCode.OK, await Send(client, HttpMethod.Get, "/v1/price-checks?sku=P&channel=web&price=50"));
        Assert.Contains("PriceFloor.Pricing.dll", Loaded(service), StringComparison.Ordinal); // so it can be seen there
        Assert.DoesNotContain(Library, Loaded(service), StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.OK, await Send(client, HttpMethod.Get, "/v1/designs/P/evidence"));
        Assert.Contains(Library, Loaded(service), StringComparison.Ordinal);
    }

    private static string Loaded(RealProgram.Started service) => File.ReadAllText($"/proc/{service.Process.Id}/maps");

    private static async Task<HttpStatusCode> Send(HttpClient client, HttpMethod method, string path, string? json = null)
    {
        using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative))
        {
            Content = json is null ? null : new StringContent(json, Encoding.UTF8, "application/json"),
        };
        using var answer = await client.SendAsync(request, Studio.Cancellation);
        return answer.StatusCode;
    }
}
