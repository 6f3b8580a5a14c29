using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>The fees in the demo, the pages, the contract and the example requests are invented: no real price list is quoted.</summary>
public sealed class InventedFeesTests
{
    /// <summary>Rates and fixed amounts that readers would take for a card processor's or a marketplace's own.</summary>
    private const string WellKnown = """rate"?: ?(0\.029|0\.03|0\.026), ?"?fixed"?: ?0\.(30?|25|10?)\b|rate"?: ?0\.065\b|fixed"?: ?0\.20?\b""";

    [Fact]
    public void No_example_quotes_a_well_known_fee()
    {
        string[] folders = ["docs", "http-examples", "openapi", "src/PriceFloor.Api/Demo", "src/PriceFloor.Api/OpenApi", "tests/clients"];
        string[] endings = [".md", ".http", ".json", ".yaml", ".cs", ".ts"];
        var files = folders.SelectMany(folder => Directory.EnumerateFiles(Repository.File(folder), "*", SearchOption.AllDirectories))
            .Where(file => endings.Contains(Path.GetExtension(file)) && !file.Contains("node_modules", StringComparison.Ordinal))
            .Append(Repository.File("README.md")).ToList();
        Assert.True(files.Count > 50);
        foreach (var file in files)
            Assert.False(Regex.IsMatch(File.ReadAllText(file), WellKnown,
                RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)), file);
    }

    [Theory]
    [InlineData("""{ "name": "card", "rate": 0.029, "fixed": 0.30, "of": "paid" }""")]
    [InlineData("""{"name":"card","rate":0.03,"fixed":0.3}""")]
    [InlineData("""{ "rate": 0.065, "of": "price-and-shipping" }""")]
    [InlineData("""{ "name": "listing", "fixed": 0.20 }""")]
    public void Such_a_fee_is_found(string fee) => Assert.Matches(WellKnown, fee);
}
