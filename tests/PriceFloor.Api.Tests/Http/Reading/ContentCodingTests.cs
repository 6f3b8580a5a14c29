using System.IO.Compression;
using System.Text;
using PriceFloor.Api.Access;
using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>A body that says it is compressed is refused on every address that reads one, and nothing is stored.</summary>
public sealed class ContentCodingTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    [InlineData("identity,gzip")]
    [InlineData("nonsense")]
    public async Task Another_coding_than_identity_is_refused_with_what_is_accepted(string coding)
    {
        var studio = await AShop();
        foreach (var (method, path, type, good) in GoodBodies.All)
        {
            var answer = await studio.SendBytes(method, path, Zipped(good), type, headers: ("Content-Encoding", coding));
            answer.IsProblem(415, "media-type");
            Assert.Equal((path, "identity"), (path, answer["Accept-Encoding"]));
            Assert.Contains($"Content-Encoding \"{coding}\"", answer.Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
        }

        (await studio.Get("/v1/profiles/new")).IsProblem(404, "not-found");
    }

    [Theory]
    [InlineData("identity")]
    [InlineData("Identity")]
    [InlineData("")]
    public async Task Identity_changes_nothing(string coding)
    {
        var studio = await AShop();
        foreach (var (method, path, type, good) in GoodBodies.All.Where(body => body.Method == "POST" && !GoodBodies.NeedMore.Contains(body.Path)))
            Assert.Equal((path, type, 200), (path, type,
                (await studio.SendBytes(method, path, Encoding.UTF8.GetBytes(good), type, headers: ("Content-Encoding", coding))).Status));
    }

    [Fact]
    public async Task A_format_that_is_not_taken_says_nothing_of_codings()
    {
        var studio = await AShop();
        var answer = (await studio.SendBytes("POST", "/v1/price-checks", "{}"u8.ToArray(), "text/plain")).IsProblem(415, "media-type");
        Assert.Null(answer["Accept-Encoding"]);
    }

    private static byte[] Zipped(string text)
    {
        using var zipped = new MemoryStream();
        using (var zip = new GZipStream(zipped, CompressionLevel.Fastest))
            zip.Write(Encoding.UTF8.GetBytes(text));
        return zipped.ToArray();
    }

    private async Task<Studio> AShop()
    {
        var studio = shared.Of("Production");
        await studio.HasASmallShop();
        return studio;
    }
}
