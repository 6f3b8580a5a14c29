using System.Text.RegularExpressions;
using PriceFloor.Api.Tests.DocCommands;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>A maker has a spreadsheet and uses a terminal a little. Pages for makers have no words that only programmers know.</summary>
public sealed partial class MakerWordTests
{
    private static readonly string[] s_alsoForMakers = ["docs/from-statements.md", "docs/costs-people-forget.md", "docs/reading-the-workings.md"];

    [Fact]
    public void No_page_for_makers_uses_a_word_that_only_programmers_know()
    {
        var pages = DocPages.All.Where(page => s_alsoForMakers.Contains(page)
            || File.ReadLines(Repository.File(page)).Take(6).Any(line => line.StartsWith("For the maker.", StringComparison.Ordinal))).ToList();
        Assert.True(pages.Count >= 18, string.Join(", ", pages));
        Assert.Empty(pages.SelectMany(page => Prose(page).Split('\n').Index().Where(line => OfPrograms().IsMatch(line.Item))
            .Select(line => $"{page}:{line.Index + 1}: {OfPrograms().Match(line.Item).Value}")));
    }

    /// <summary>A page without what its reader types, without links' addresses and without notes to tests; its lines stay where they are.</summary>
    private static string Prose(string page) => NotProse().Replace(File.ReadAllText(Repository.File(page)),
        match => new string('\n', match.Value.Count(letter => letter == '\n')));

    [GeneratedRegex("^```.*?^```$|`[^`\n]*`|\\]\\([^)]*\\)|<!--.*?-->", RegexOptions.Multiline | RegexOptions.Singleline, 5000)]
    private static partial Regex NotProse();

    [GeneratedRegex(@"\b(?i:body|bodies|malformed|merge patch|endpoints?|payloads?|query|parameters?|revisions?|etag|json|arrays?|pointers?|null"
        + @"|boolean|string|4[0-9]{2} (answer|error)|a 4[0-9]{2})\b|\b(GET|PUT|POST|PATCH)\b", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex OfPrograms();
}
