using System.Text.RegularExpressions;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Tests.DocCommands;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>Every link of a page leads to an existing file and heading, and every page can be reached from the README.</summary>
public sealed partial class LinkTests
{
    private static readonly string[] s_pages = [.. DocPages.All, ".github/SECURITY.md"];

    [Fact]
    public void Every_link_leads_somewhere()
    {
        var links = s_pages.SelectMany(LinksOf).ToList();
        Assert.True(links.Count > 100);
        Assert.Empty(links.Where(link => !Path.Exists(Repository.File(link.To))
            || (link.Heading is { } heading && !HeadingsOf(link.To).Contains(heading))).Select(link => $"{link.From}: {link.Text}"));
    }

    [Fact]
    public void Every_page_is_found_from_the_readme()
    {
        var (found, next) = (new HashSet<string> { "README.md" }, new Queue<string>(["README.md"]));
        while (next.TryDequeue(out var page))
            foreach (var to in LinksOf(page).Select(link => PageAt(link.To)).Where(to => s_pages.Contains(to) && found.Add(to)))
                next.Enqueue(to);
        // README.md links the folder of the decisions.
        Assert.DoesNotContain(s_pages, page => !found.Contains(page) && !page.StartsWith("docs/decisions/", StringComparison.Ordinal));
    }

    private static IEnumerable<(string From, string To, string? Heading, string Text)> LinksOf(string page) =>
        from Match match in Link().Matches(Fence().Replace(File.ReadAllText(Repository.File(page)), ""))
        let target = match.Groups["target"].Value
        where !target.Contains("://", StringComparison.Ordinal)
        let parts = target.Split('#')
        let to = parts[0].Length == 0 ? page : Path.GetRelativePath(Repository.Root,
            Path.GetFullPath(Path.Combine(Repository.Root, Path.GetDirectoryName(page)!, parts[0]))).Replace('\\', '/')
        select (page, to, parts.Length > 1 ? parts[1] : null, target);

    /// <summary>The pages that a reader sees in a folder.</summary>
    private static string PageAt(string path) => Directory.Exists(Repository.File(path)) ? $"{path.TrimEnd('/')}/README.md" : path;

    /// <summary>Headings as GitHub writes them in addresses.</summary>
    private static IEnumerable<string> HeadingsOf(string page) =>
        from line in Fence().Replace(File.ReadAllText(Repository.File(page)), "").Split('\n')
        where line.StartsWith('#')
        select NoLetter().Replace(line.TrimStart('#').Trim().ToLowerInvariant(), "").Replace(' ', '-');

    [GeneratedRegex("\\]\\((?<target>[^)\\s]+)\\)", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Link();

    [GeneratedRegex("^```.*?^```$", RegexOptions.Multiline | RegexOptions.Singleline, 5000)]
    private static partial Regex Fence();

    [GeneratedRegex("[^\\p{L}\\p{Nd} _-]", RegexOptions.None, 1000)]
    private static partial Regex NoLetter();
}
