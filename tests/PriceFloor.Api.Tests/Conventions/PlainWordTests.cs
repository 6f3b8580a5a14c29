using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>Words that make a sentence read as old or as translated. Each has a plain one that everybody knows.</summary>
public sealed partial class PlainWordTests
{
    private static readonly string[] s_folders = ["src", "docs", "http-examples", ".github"];

    [Fact]
    public void No_comment_message_or_page_uses_a_word_that_has_a_plainer_one()
    {
        var found = Texts().SelectMany(file => File.ReadLines(file).Index()
            .Where(line => Old().IsMatch(line.Item))
            .Select(line => $"{Path.GetRelativePath(Repository.File("."), file)}:{line.Index + 1}: {Old().Match(line.Item).Value}"));
        Assert.Empty(found);
    }

    private static IEnumerable<string> Texts() => s_folders
        .SelectMany(folder => Directory.EnumerateFiles(Repository.File(folder), "*.*", SearchOption.AllDirectories))
        .Concat([Repository.File("README.md"), Repository.File("DEVELOPERS.md")])
        .Where(file => Path.GetExtension(file) is ".cs" or ".md" or ".http" or ".py" or ".mjs" or ".php" or ".sh" or ".html"
            && !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/bin/", StringComparison.Ordinal));

    /// <summary>
    /// Plain words for these: fix, calculate, has, so, by this; again, silently, occasionally, constant memory, upgraded, reports, rests on, newest
    /// first, by default. "reckoned" stays as a name in the contract.
    /// </summary>
    [GeneratedRegex(
        @"\b(?i:mend(s|ed|ing)?|reckon(s|ing)?|wherein|whereby|thereby|thereof|hence|in the air|to and fro|fain|albeit|bears"
        + @"|(begin|begins|begun|writes?|written|makes?|made|starts?|started|draws?|copy) anew|in silence|now and then|flat memory"
        + @"|brought up to date|(tells?|told|spoken) of|leans? on|the (newest|oldest|largest|smallest) first|where not (set|given)"
        + @"|(as it|as they) stands?|shown this once|pools?)\b|(?<![""'`.<])\breckoned\b(?![""'`])",
        RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Old();
}
