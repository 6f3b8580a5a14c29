using System.Text.RegularExpressions;
using System.Xml.Linq;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>What the project files say, used or not.</summary>
public sealed class ProjectTests
{
    [Fact]
    public void Nothing_but_tests_references_Api()
    {
        foreach (var project in Projects("src"))
            Assert.DoesNotContain("PriceFloor.Api.csproj", Includes(project, "ProjectReference"));
        Assert.Contains("PriceFloor.Api.csproj", Includes(Repository.File("tests/PriceFloor.Api.Tests/PriceFloor.Api.Tests.csproj"), "ProjectReference"));
    }

    [Fact]
    public void Pricing_references_nothing_but_the_framework()
    {
        var pricing = Repository.File("src/PriceFloor.Pricing/PriceFloor.Pricing.csproj");
        Assert.Empty(Includes(pricing, "PackageReference").Concat(Includes(pricing, "ProjectReference")).Concat(Includes(pricing, "FrameworkReference")));
        Assert.Equal("Microsoft.NET.Sdk", XDocument.Load(pricing).Root!.Attribute("Sdk")!.Value);
    }

    [Fact]
    public void Storage_references_neither_ASP_NET_nor_the_model()
    {
        var storage = Repository.File("src/PriceFloor.Storage/PriceFloor.Storage.csproj");
        Assert.Equal(["Dapper", "Microsoft.Data.Sqlite"], Includes(storage, "PackageReference").Order());
        Assert.Empty(Includes(storage, "ProjectReference").Concat(Includes(storage, "FrameworkReference")));
        Assert.Equal("Microsoft.NET.Sdk", XDocument.Load(storage).Root!.Attribute("Sdk")!.Value);
    }

    [Fact]
    public void Only_one_file_writes_problems_and_none_reads_the_clock_itself()
    {
        foreach (var file in Directory.EnumerateFiles(Repository.File("src"), "*.cs", SearchOption.AllDirectories).Where(file => !Regex.IsMatch(file, "[/\\\\](obj|bin)[/\\\\]")))
        {
            var text = File.ReadAllText(file);
            Assert.True(!text.Contains("ProblemDetails", StringComparison.Ordinal) && !text.Contains("TypedResults.Problem", StringComparison.Ordinal), file);
            Assert.False(Regex.IsMatch(text, @"\bDateTime(Offset)?\.(Utc)?Now\b"), file);
        }
    }

    private static IEnumerable<string> Projects(string folder) => Directory.EnumerateFiles(Repository.File(folder), "*.csproj", SearchOption.AllDirectories);

    private static IEnumerable<string> Includes(string project, string element) =>
        XDocument.Load(project).Descendants(element).Select(item => item.Attribute("Include")!.Value.Split('/', '\\')[^1]);
}
