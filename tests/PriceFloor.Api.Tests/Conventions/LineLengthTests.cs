using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>Lines are short enough to read without moving the eyes back: width must not hide length.</summary>
public sealed partial class LineLengthTests
{
    private const int Most = 150;
    private static readonly string[] s_folders = ["src", "tests"];

    [Fact]
    public void No_line_is_longer_than_150_characters() => Assert.Empty(s_folders
        .SelectMany(folder => Directory.EnumerateFiles(Repository.File(folder), "*.cs", SearchOption.AllDirectories))
        .Where(file => !file.Split(Path.DirectorySeparatorChar).Any(folder => folder is "obj" or "bin"))
        .SelectMany(LongLinesOf));

    private static IEnumerable<string> LongLinesOf(string file)
    {
        var (lines, raw) = (File.ReadAllLines(file), (string?)null);
        for (var i = 0; i < lines.Length; i++)
        {
            if (raw is not null)
            {
                // The inside of a raw string is text; it ends at the line that begins with as many quotes.
                if (lines[i].TrimStart().StartsWith(raw, StringComparison.Ordinal))
                    raw = null;
                continue;
            }
            if (lines[i].Length > Most && !OneLiteral().IsMatch(lines[i]))
                yield return $"{Path.GetRelativePath(Repository.Root, file)}({i + 1}) has {lines[i].Length} characters";
            raw = OpenRaw().Match(lines[i]) is { Success: true } open ? open.Groups["quotes"].Value : null;
        }
    }

    [GeneratedRegex(@"(?<quotes>""""""+)\s*$", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex OpenRaw();

    /// <summary>A line with one literal and little else: if it were cut, it could no longer be found or copied as a whole.</summary>
    [GeneratedRegex($"^\\s*(\\+ |\\.\\. |: |\\? |=> |\\{{ |\\()?({Raw}|{Plain}|{Verbatim}|{WithHoles})[^\"]{{0,40}}$",
        RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex OneLiteral();

    private const string Raw = @"\$*(?<q>""{3,}).*?\k<q>";
    private const string Plain = @"""([^""\\]|\\.)*""(u8)?";
    private const string Verbatim = @"@""([^""]|"""")*""";
    private const string WithHoles = @"\$""(\{\{|\}\}|[^""\\{}]|\\.|\{([^{}""]|""[^""{}]*""|\$""[^""]*"")*\})*""";
}
