using System.Text.RegularExpressions;

namespace PriceFloor.Api.Tests.PriceLists;

/// <summary>The rows of a page to print, as a reader sees them: the cells of each with a line between them.</summary>
internal static partial class PrintedRows
{
    public static IReadOnlyList<string> Of(string page) => [.. Row().Matches(page).Select(row => Tags().Replace(row.Value, "|").Trim('|'))];

    public static IReadOnlyList<string> HeadingsOf(string page) => [.. Heading().Matches(page).Select(heading => heading.Groups["text"].Value)];

    [GeneratedRegex("<tr><th scope=\"row\">.*?</tr>", RegexOptions.None, 5000)]
    private static partial Regex Row();

    [GeneratedRegex("(<[^>]+>)+", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Tags();

    [GeneratedRegex("<h2>(?<text>.*?)</h2>", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Heading();
}
