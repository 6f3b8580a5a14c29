using System.Text;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Tests.Running;
using Xunit;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>The contract comes from the files that the build left, or from the code: nobody who asks for it can see which.</summary>
public sealed class BakedContractTests : IDisposable
{
    private static readonly string[] s_formats = ["json", "yaml"];
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-contract-").FullName;

    private BakedContract Baked => new(_folder);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task What_the_build_left_is_what_the_code_writes_byte_for_byte()
    {
        await using var studio = new Studio();
        var (left, written) = (BakedContract.BesideTheProgram.Read(), await ContractTexts.WrittenBy(studio.Services));
        Assert.NotNull(left);
        Assert.Equal(Encoding.UTF8.GetString(written.Json), Encoding.UTF8.GetString(left.Json));
        Assert.Equal(Encoding.UTF8.GetString(written.Yaml), Encoding.UTF8.GetString(left.Yaml));
    }

    [Fact]
    public async Task The_files_are_served_and_nothing_is_written_from_the_code()
    {
        Baked.Write(new ContractTexts("""{"openapi":"3.1.2"}"""u8.ToArray(), "openapi: '3.1.2'"u8.ToArray()));
        await using var studio = With(Baked);
        Assert.Equal("""{"openapi":"3.1.2"}""", (await studio.Get("/openapi/v1.json")).Text);
        Assert.Equal("openapi: '3.1.2'", (await studio.Get("/openapi/v1.yaml")).Text);
        File.Delete(Path.Combine(_folder, "v1.json")); // read once: an upgrade of the files does not reach a service that runs
        Assert.Equal("""{"openapi":"3.1.2"}""", (await studio.Get("/openapi/v1.json")).Text);
    }

    /// <summary>A file is gone, is cut short, has one byte more, or vouches for a program of another build.</summary>
    [Theory]
    [InlineData("v1.json", "gone")]
    [InlineData("v1.yaml", "gone")]
    [InlineData("v1.build", "gone")]
    [InlineData("v1.json", "cut")]
    [InlineData("v1.yaml", "longer")]
    [InlineData("v1.build", "other")]
    public void Files_that_this_build_did_not_leave_are_not_used(string file, string harm)
    {
        Baked.Write(new ContractTexts("{}"u8.ToArray(), "{ }"u8.ToArray()));
        Assert.NotNull(Baked.Read());
        var path = Path.Combine(_folder, file);
        var text = File.ReadAllText(path);
        if (harm == "gone")
            File.Delete(path);
        else
            File.WriteAllText(path, harm switch
            {
                "cut" => text[..^1],
                "longer" => text + " ",
                _ => $"{Guid.Empty}{text[Guid.Empty.ToString().Length..]}",
            });
        Assert.Null(Baked.Read());
    }

    [Fact]
    public async Task Without_files_of_this_build_texts_and_headers_are_the_same()
    {
        await using var usual = new Studio();
        await using var without = With(Baked);
        foreach (var format in s_formats)
        {
            var (expected, answer) = (await usual.Get($"/openapi/v1.{format}"), await without.Get($"/openapi/v1.{format}"));
            Assert.Equal((200, expected.Text), (answer.Status, answer.Text));
            Assert.Equal(HeadersOf(expected), HeadersOf(answer));
        }
    }

    /// <summary>The server's address is all in the document that a setting moves; JSON or YAML would write the last one in another way.</summary>
    [Theory]
    [InlineData("/pricefloor", true)]
    [InlineData("/shop/price-floor_1.0/~ada", true)]
    [InlineData("/an \"odd\": #path", false)]
    public async Task Below_a_path_the_files_give_what_the_code_writes_there(string path, bool fromFiles)
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_PATH_BASE", path));
        var written = await ContractTexts.WrittenBy(studio.Services);
        foreach (var format in s_formats)
        {
            var served = (await studio.Get($"/openapi/v1.{format}")).Text;
            Assert.Equal(Encoding.UTF8.GetString(format == "json" ? written.Json : written.Yaml), served);
        }

        Assert.Equal(fromFiles, BakedContract.BesideTheProgram.Read()!.Below(path) is not null);
    }

    [Fact]
    public async Task What_the_builder_has_set_does_not_reach_the_files()
    {
        var made = Path.Combine(_folder, "made");
        var settings = new Dictionary<string, string>
        {
            ["PRICEFLOOR_PATH_BASE"] = "/mine",
            ["PRICEFLOOR_METRICS"] = "perhaps",
            ["ASPNETCORE_URLS"] = "nonsense",
        };
        var run = await RealProgram.Run(_folder, settings, "openapi-files", made);
        Assert.Equal((0, $"The OpenAPI document is in {made}.\n", ""), (run.Code, run.Output, run.Errors));
        foreach (var file in new[] { "v1.json", "v1.yaml", "v1.build" })
            Assert.Equal(await File.ReadAllTextAsync(Path.Combine(BakedContract.BesideTheProgram.Folder, file), Studio.Cancellation),
                await File.ReadAllTextAsync(Path.Combine(made, file), Studio.Cancellation));
        Assert.Equal(["made"], Directory.EnumerateFileSystemEntries(_folder).Select(Path.GetFileName)); // and no store
    }

    private static Studio With(BakedContract baked) =>
        new(configure: host => host.ConfigureTestServices(services => services.AddSingleton(baked)));

    private static IEnumerable<(string, string)> HeadersOf(Answer answer) =>
        answer.Headers.Where(header => !header.Key.Equals("X-Request-Id", StringComparison.OrdinalIgnoreCase))
            .Select(header => (header.Key, header.Value)).Order();
}
