using System.Text.RegularExpressions;
using SharpYaml.Serialization;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>Other people's work that our builds run is pinned by its content, so nothing else can appear under the same name.</summary>
public sealed partial class PinTests
{
    private static readonly string s_workflows = Repository.File(".github/workflows");

    [Fact]
    public void Every_action_is_pinned_by_commit_and_names_its_version()
    {
        var used = Directory.EnumerateFiles(s_workflows).SelectMany(File.ReadLines)
            .Where(line => line.Contains("uses:", StringComparison.Ordinal) && !line.Contains("uses: ./", StringComparison.Ordinal)).ToList();
        Assert.True(used.Count > 5);
        Assert.All(used, line => Assert.Matches(PinnedAction(), line));
        var versions = used.Select(line => line.Split("uses:")[1].Trim()).Distinct().GroupBy(action => action.Split('@')[0]);
        Assert.All(versions, action => Assert.Single(action)); // one version of each, wherever it is used
    }

    [Fact]
    public void Every_base_image_is_pinned_by_digest_beside_its_tag()
    {
        var dockerfiles = Directory.EnumerateFiles(Repository.Root, "Dockerfile*").ToList();
        Assert.NotEmpty(dockerfiles);
        foreach (var file in dockerfiles)
        {
            var stages = File.ReadLines(file).Where(line => line.StartsWith("FROM ", StringComparison.OrdinalIgnoreCase)).ToList();
            Assert.NotEmpty(stages);
            Assert.All(stages, line => Assert.Matches(PinnedImage(), line));
        }
    }

    [Theory]
    [InlineData("      - uses: actions/checkout@v4")]
    [InlineData("      - uses: actions/checkout@11d5960a326750d5838078e36cf38b85af677262")]
    [InlineData("        uses: actions/checkout@11d5960 # v4.4.0")]
    public void An_action_that_is_not_would_be_noticed(string line) => Assert.DoesNotMatch(PinnedAction(), line);

    [Theory]
    [InlineData("FROM mcr.microsoft.com/dotnet/aspnet:10.0-noble-chiseled")]
    [InlineData("FROM mcr.microsoft.com/dotnet/aspnet@sha256:48e51f2f6798897be7ac4e775c049ed8fe60d3190f637e1f9c9dc7513efa659c")]
    public void An_image_that_is_not_would_be_noticed(string line) => Assert.DoesNotMatch(PinnedImage(), line);

    [Fact]
    public void Newer_versions_of_all_that_is_pinned_are_asked_for()
    {
        var yaml = new YamlStream();
        yaml.Load(new StringReader(File.ReadAllText(Repository.File(".github/dependabot.yml"))));
        var updates = (YamlSequenceNode)At(yaml.Documents[0].RootNode, "updates")!;
        var watched =
            updates.Children.SelectMany(update => Folders(update).Select(folder => $"{Text(At(update, "package-ecosystem"))} {folder}")).ToList();

        string[] wanted = ["github-actions /", "docker /", "nuget /", .. Holding("package.json", "npm"),
            .. Holding("Directory.Packages.props", "nuget")];
        Assert.Equal(wanted.Order(StringComparer.Ordinal), watched.Order(StringComparer.Ordinal));
    }

    /// <summary>Folders below tests/ that hold such a file of their own.</summary>
    private static IEnumerable<string> Holding(string file, string ecosystem) =>
        Directory.EnumerateFiles(Repository.File("tests"), file, SearchOption.AllDirectories)
            .Select(found => Path.GetRelativePath(Repository.Root, Path.GetDirectoryName(found)!).Replace('\\', '/'))
            .Where(folder => !folder.Split('/').Any(part => part is "bin" or "obj" or "node_modules" or "artifacts"))
            .Select(folder => $"{ecosystem} /{folder}");

    private static IEnumerable<string> Folders(YamlNode update) =>
        At(update, "directories") is YamlSequenceNode many ? many.Children.Select(Text) : [Text(At(update, "directory"))];

    private static YamlNode? At(YamlNode node, string name) =>
        ((YamlMappingNode)node).Children.TryGetValue(new YamlScalarNode(name), out var found) ? found : null;

    private static string Text(YamlNode? node) => ((YamlScalarNode)node!).Value!;

    [GeneratedRegex("^ *(- )?uses: [A-Za-z0-9._/-]+@[0-9a-f]{40} # v[0-9]+\\.[0-9]+\\.[0-9]+$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PinnedAction();

    [GeneratedRegex("^FROM (--platform=\\S+ )?\\S+:[A-Za-z0-9._-]+@sha256:[0-9a-f]{64}( AS [a-z]+)?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PinnedImage();
}
