using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>A file is found by its type: it is named after its first type, and the types below that are small.</summary>
public sealed partial class FileTests
{
    private const int MostLinesOfAFurtherType = 30;

    [Fact]
    public void A_file_is_named_after_its_first_type_and_a_further_one_in_it_is_small()
    {
        var types = Directory.EnumerateFiles(Repository.File("src"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .ToDictionary(file => file, file => TypesOf(File.ReadAllLines(file)));
        Assert.True(types.Values.Sum(inFile => inFile.Count) > 500, "the types were not read");
        Assert.Empty(types.Where(file => file.Value.Count > 0)
            .SelectMany(file => FaultsOf(Path.GetFileNameWithoutExtension(file.Key), file.Value)));
    }

    private static IEnumerable<string> FaultsOf(string file, IReadOnlyList<(string Name, int Lines)> types)
    {
        if (file.Split('.')[0] != types[0].Name)
            yield return $"{file}.cs begins with {types[0].Name}";
        foreach (var (name, lines) in types.Skip(1).Where(type => type.Lines > MostLinesOfAFurtherType))
            yield return $"{file}.cs has {name} in it, of {lines} lines";
    }

    /// <summary>The top-level types: their declarations begin at the margin.</summary>
    private static List<(string Name, int Lines)> TypesOf(string[] lines) => [.. lines.Index()
        .Select(line => (line.Index, Match: Declaration().Match(line.Item)))
        .Where(line => line.Match.Success)
        .Select(line => (line.Match.Groups["name"].Value, EndOf(lines, line.Index) - line.Index + 1))];

    private static int EndOf(string[] lines, int declaration)
    {
        for (var i = declaration; i < lines.Length; i++)
        {
            if (lines[i] == "{")
                return Array.IndexOf(lines, "}", i);
            if (lines[i].EndsWith(';') || (i == declaration && lines[i].EndsWith('}')))
                return i;
        }
        throw new InvalidOperationException($"{lines[declaration]} has no end");
    }

    [GeneratedRegex(@"^((public|internal|file|static|sealed|abstract|partial|readonly|ref) )*"
        + @"(record struct|record|class|struct|interface|enum) (?<name>\w+)", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Declaration();
}
