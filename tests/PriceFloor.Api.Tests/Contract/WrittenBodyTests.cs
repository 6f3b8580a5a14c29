using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>
/// A request is written once, as an example of the contract. http-examples and the pages have copies to run, each with the name of its file above it,
/// and differ from it in nothing.
/// </summary>
public sealed class WrittenBodyTests
{
    [Fact]
    public void A_body_that_names_an_example_is_its_text()
    {
        var copies = WrittenBody.All.Where(body => body.Example is not null).ToList();
        Assert.InRange(copies.Count, 25, 200);
        Assert.Empty(copies.Where(copy => !File.Exists(Repository.File(copy.Example!))).Select(copy => $"{copy.Page}: no example {copy.Says}"));
        var others = copies.Where(copy => copy.Text != ExampleOf(copy)).ToList();
        foreach (var page in others.GroupBy(copy => copy.Page))
            ExampleFiles.ProposePage(page.Key, page.Reverse().Aggregate(File.ReadAllText(Repository.File(page.Key)), (text, copy) =>
                text.Remove(copy.At, copy.Text.Length).Insert(copy.At, ExampleOf(copy))));
        Assert.True(others.Count == 0, $"Other bodies than their examples:\n{string.Join('\n', others.Select(copy => $"{copy.Page}: {copy.Says}"))}\n"
            + "The pages with the examples' text are in artifacts/examples. Look at them, then copy them over: cp -r artifacts/examples/. .");
    }

    [Fact]
    public void Every_body_in_http_examples_names_its_example_or_says_why_it_is_only_there() =>
        Assert.Empty(WrittenBody.All.Where(body => body.Page.EndsWith(".http", StringComparison.Ordinal) && body.Says is null)
            .Select(body => $"{body.Page}: write \"# Body: \" and the example's file, or \"{WrittenBody.OnlyHere}\" and why, above\n{body.Text}"));

    /// <summary>A copy without the name of its example would drift from it.</summary>
    [Fact]
    public void A_body_that_is_an_example_says_so()
    {
        var examples = Directory.EnumerateFiles(Repository.File("src/PriceFloor.Api"), "*.request.json", SearchOption.AllDirectories)
            .Where(file => Path.GetDirectoryName(file)!.EndsWith("Examples", StringComparison.Ordinal))
            .GroupBy(file => ExampleText.OnOneLine(File.ReadAllText(file)), file => Path.GetRelativePath(Repository.File("src/PriceFloor.Api"), file))
            .ToDictionary(same => same.Key, same => same.First());
        Assert.Empty(from body in WrittenBody.All
                     where body.Example is null && body.Text.TrimStart() is ['{' or '[', ..] && !body.Text.Contains("}\n{", StringComparison.Ordinal)
                     where examples.TryGetValue(ExampleText.OnOneLine(body.Text), out _)
                     select $"{body.Page}: write \"Body: {examples[ExampleText.OnOneLine(body.Text)]}\" above\n{body.Text}");
    }

    /// <summary>Bodies are found wherever a request has one; a reader of files that finds none would find no fault either.</summary>
    [Fact]
    public void Each_request_with_a_content_type_has_a_body()
    {
        foreach (var file in Directory.EnumerateFiles(Repository.File("http-examples"), "*.http"))
            Assert.Equal(File.ReadAllText(file).Split("\nContent-Type: ").Length - 1,
                WrittenBody.All.Count(body => Path.GetFileName(body.Page) == Path.GetFileName(file)));
        Assert.True(WrittenBody.All.Count(body => body.Page == "docs/your-floor.md") >= 5);
        Assert.Contains(WrittenBody.All, body => body.Page == "README.md");
    }

    /// <summary>A sheet's own line ends are not those of the page.</summary>
    private static string ExampleOf(WrittenBody copy) =>
        File.ReadAllText(Repository.File(copy.Example!)).Replace("\r\n", "\n", StringComparison.Ordinal).TrimEnd('\n');
}
