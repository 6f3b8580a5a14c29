using System.Text.RegularExpressions;
using System.Xml.Linq;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>Every entry of the project files is used.</summary>
public sealed class ProjectTests
{
    private static readonly (string Folder, string Package)[] s_engines =
        [("src/PriceFloor.Storage.Sqlite", "Microsoft.Data.Sqlite"), ("src/PriceFloor.Storage.Postgres", "Npgsql")];

    [Fact]
    public void Nothing_but_tests_references_Api()
    {
        foreach (var project in Projects("src"))
            Assert.DoesNotContain("PriceFloor.Api.csproj", Includes(project, "ProjectReference"));
        Assert.Contains("PriceFloor.Api.csproj",
            Includes(Repository.File("tests/PriceFloor.Api.Tests/PriceFloor.Api.Tests.csproj"), "ProjectReference"));
    }

    [Fact]
    public void Pricing_references_nothing_but_the_framework()
    {
        var pricing = Repository.File("src/PriceFloor.Pricing/PriceFloor.Pricing.csproj");
        Assert.Empty(Includes(pricing, "PackageReference").Concat(Includes(pricing, "ProjectReference"))
            .Concat(Includes(pricing, "FrameworkReference")));
        Assert.Equal("Microsoft.NET.Sdk", XDocument.Load(pricing).Root!.Attribute("Sdk")!.Value);
    }

    [Fact]
    public void Storage_references_neither_ASP_NET_nor_the_model()
    {
        var storage = Repository.File("src/PriceFloor.Storage/PriceFloor.Storage.csproj");
        Assert.Empty(Includes(storage, "PackageReference").Concat(Includes(storage, "ProjectReference"))
            .Concat(Includes(storage, "FrameworkReference"))); // nor an engine
        Assert.Equal("Microsoft.NET.Sdk", XDocument.Load(storage).Root!.Attribute("Sdk")!.Value);
        foreach (var (engine, package) in s_engines.Select(one => (Projects(one.Folder).Single(), one.Package)))
        {
            Assert.Equal(["Dapper", package], Includes(engine, "PackageReference").Order());
            Assert.Equal(["PriceFloor.Storage.csproj"], Includes(engine, "ProjectReference").Concat(Includes(engine, "FrameworkReference")));
        }
    }

    [Fact]
    public void Api_names_an_engine_in_one_file_and_the_compiler_shows_it_none()
    {
        var named = Files("src/PriceFloor.Api", "*.cs").Concat(Files("src/PriceFloor.Storage", "*.cs")).Where(file =>
            Regex.IsMatch(Regex.Replace(File.ReadAllText(file), "///.*", "", RegexOptions.None, TimeSpan.FromSeconds(5)),
                "sqlite|postgres|npgsql|dapper", RegexOptions.IgnoreCase, TimeSpan.FromSeconds(5)));
        Assert.Equal(["StoreChoice.cs"], named.Select(Path.GetFileName));
        foreach (var (folder, _) in s_engines)
            Assert.All(XDocument.Load(Projects(folder).Single()).Descendants("PackageReference"),
                reference => Assert.Contains("compile", reference.Attribute("PrivateAssets")?.Value.Split(';') ?? []));
    }

    [Fact]
    public void One_file_calls_the_engine_so_its_exceptions_go_no_further()
    {
        var others = Files("src/PriceFloor.Storage", "*.cs").Concat(s_engines.SelectMany(engine => Files(engine.Folder, "*.cs")))
            .Where(file => Path.GetFileName(file) != "EngineCalls.cs");
        foreach (var file in others)
            Assert.False(Regex.IsMatch(File.ReadAllText(file),
                @"\b(Dapper|SqliteException|SQLitePCL|NpgsqlException|PostgresException|BeginTransaction(Async)?|CreateCommand|NpgsqlCommand)\b"
                + @"|\.(Commit|Rollback|Open)(Async)?\(\)",
                RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)), file);
    }

    [Fact]
    public void Only_one_file_writes_problems_and_none_reads_the_clock_itself()
    {
        foreach (var file in Files("src", "*.cs"))
        {
            var text = File.ReadAllText(file);
            Assert.True(
                !text.Contains("ProblemDetails", StringComparison.Ordinal) && !text.Contains("TypedResults.Problem", StringComparison.Ordinal), file);
            Assert.False(Regex.IsMatch(text, @"\bDateTime(Offset)?\.(Utc)?Now\b", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)), file);
        }
    }

    private static IEnumerable<string> Projects(string folder) => Files(folder, "*.csproj");

    private static IEnumerable<string> Files(string folder, string pattern) =>
        Directory.EnumerateFiles(Repository.File(folder), pattern, SearchOption.AllDirectories)
            .Where(file => !Regex.IsMatch(file, @"[/\\](obj|bin)[/\\]", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)));

    private static IEnumerable<string> Includes(string project, string element) =>
        XDocument.Load(project).Descendants(element).Select(item => item.Attribute("Include")!.Value.Split('/', '\\')[^1]);
}
