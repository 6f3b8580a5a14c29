using System.Text.RegularExpressions;
using PriceFloor.Api.Tests.Conventions;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>The commands that the README, DEVELOPERS.md and docs/ give their readers.</summary>
public static partial class DocPages
{
    /// <summary>A fenced block with its language; empty if it has none.</summary>
    public sealed record Block(string Page, string Language, string Text)
    {
        public string FirstLine => Text.Split('\n')[0];
    }

    public static IReadOnlyList<string> All { get; } =
    [
        "README.md", "DEVELOPERS.md",
        .. Directory.EnumerateFiles(Repository.File("docs"), "*.md", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(Repository.Root, file).Replace('\\', '/')).Order(StringComparer.Ordinal),
    ];

    public static IReadOnlyList<Block> Blocks { get; } =
        [.. from page in All
            from Match match in Fence().Matches(TextOf(page))
            select new Block(page, match.Groups["language"].Value, match.Groups["text"].Value.TrimEnd('\n'))];

    /// <summary>The text between single backquotes in a line of prose.</summary>
    public static IReadOnlyList<string> Spans { get; } =
        [.. from page in All from Match match in Quoted().Matches(Fence().Replace(TextOf(page), "")) select match.Groups["text"].Value];

    /// <summary>Each command once: the lines of blocks (a line that ends in a backslash continues), and those quoted in a sentence.</summary>
    public static IReadOnlyList<string> Commands { get; } =
        [.. Blocks.Where(block => block.Language is "text" or "")
            .SelectMany(block => block.Text.Replace("\\\n", " ", StringComparison.Ordinal).Split('\n')).Concat(Spans)
            .Select(line => line.Trim()).Distinct()];

    private static string TextOf(string page) => File.ReadAllText(Repository.File(page));

    [GeneratedRegex("^```(?<language>[a-z]*)\n(?<text>.*?)^```$",
        RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Fence();

    [GeneratedRegex("`(?<text>[^`\n]+)`", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Quoted();
}
