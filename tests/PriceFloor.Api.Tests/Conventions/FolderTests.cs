using System.Reflection;
using System.Text.RegularExpressions;
using PriceFloor.Evidence.Lines;
using PriceFloor.Statements;
using PriceFloor.Storage;
using PriceFloor.Storage.Postgres;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>A folder is the namespace of its files, and no folders depend on each other in a cycle.</summary>
public sealed partial class FolderTests
{
    private static readonly Dictionary<string, Assembly> s_projects = new()
    {
        ["PriceFloor.Pricing"] = typeof(Currency).Assembly,
        ["PriceFloor.Evidence"] = typeof(Movement).Assembly,
        ["PriceFloor.Statements"] = typeof(ReadingRules).Assembly,
        ["PriceFloor.Storage"] = typeof(Store).Assembly,
        ["PriceFloor.Storage.Sqlite"] = typeof(StoreInFile).Assembly,
        ["PriceFloor.Storage.Postgres"] = typeof(StoreOnServer).Assembly,
        ["PriceFloor.Api"] = typeof(Program).Assembly,
    };

    [Fact]
    public void No_folders_of_a_project_depend_on_each_other_in_a_circle() => Assert.All(s_projects, project =>
    {
        var uses = FolderGraph.Of(project.Value);
        var isOneFolder = project.Key.StartsWith("PriceFloor.Storage", StringComparison.Ordinal);
        Assert.True(uses.Count > 0 || isOneFolder, "the graph of the project was not read");
        var circle = uses.Keys.Where(folder => Reached(uses, folder).Contains(folder)).ToHashSet();
        Assert.Empty(
            circle.SelectMany(folder => uses[folder].Where(use => circle.Contains(use.Key)).Select(use => $"{folder} -> {use.Key} ({use.Value})")));
    });

    [Fact]
    public void A_folder_is_the_namespace_of_its_files() => Assert.All(Sources(), file =>
    {
        var folder = Path.GetDirectoryName(Path.GetRelativePath(Repository.File("src"), file))!.Replace(Path.DirectorySeparatorChar, '.');
        if (Namespace().Match(File.ReadAllText(file)) is { Success: true } match)
            Assert.Equal(folder, match.Groups["name"].Value);
    });

    private static HashSet<string> Reached(IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> uses, string from)
    {
        var (reached, next) = (new HashSet<string>(), new Stack<string>([from]));
        while (next.TryPop(out var folder))
            foreach (var used in uses.TryGetValue(folder, out var all) ? all.Keys : [])
                if (reached.Add(used))
                    next.Push(used);
        return reached;
    }

    private static IEnumerable<string> Sources() => Directory.EnumerateFiles(Repository.File("src"), "*.cs", SearchOption.AllDirectories)
        .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    [GeneratedRegex(@"^namespace (?<name>[\w.]+);", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Namespace();
}
