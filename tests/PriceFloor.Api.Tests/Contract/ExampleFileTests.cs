using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>The contract and the folders Examples have the same files, and each is written for people.</summary>
public sealed class ExampleFileTests
{
    private static readonly string[] s_empty = ["", "{}", "[]"];

    [Fact]
    public async Task Every_example_that_is_named_is_a_file_and_every_file_is_named()
    {
        await using var studio = new Studio();
        var named = ExampleFiles.Operations(studio).Values.SelectMany(ExampleFiles.Of)
            .Concat(ProblemTypes.All.Select(ProblemExamples.Of)).ToList();
        var files = Directory.EnumerateFiles(Repository.File("src"), "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(Repository.Root, file).Replace(Path.DirectorySeparatorChar, '/'))
            .Where(file => file.Contains("/Examples/", StringComparison.Ordinal) && !file.Contains("/obj/", StringComparison.Ordinal)
                && !file.Contains("/bin/", StringComparison.Ordinal));
        Assert.Equal(files.Order(StringComparer.Ordinal), named.Select(ExampleFiles.PathOf).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(typeof(Example).Assembly.GetManifestResourceNames().Where(name => name.Contains(".Examples.", StringComparison.Ordinal)).Order(),
            named.Select(example => example.Resource).Distinct().Order());
        Assert.All(named, example => Assert.DoesNotContain(example.Text.Trim(), s_empty)); // the contract leaves out an empty one
    }

    [Fact]
    public async Task Every_example_in_JSON_has_a_line_for_each_part_that_does_not_fit_on_one()
    {
        await using var studio = new Studio();
        var other = ExampleFiles.Operations(studio).Values.SelectMany(ExampleFiles.Of).Concat(ProblemTypes.All.Select(ProblemExamples.Of))
            .Where(example => !example.IsOnAPage && example.File.EndsWith(".json", StringComparison.Ordinal)).Distinct()
            .Where(example => ExampleText.Readable(example.Text) != example.Text).ToList();
        foreach (var example in other)
            ExampleFiles.Propose(example, example.Text);
        Assert.True(other.Count == 0, $"{string.Join('\n', other.Select(ExampleFiles.PathOf))}\n{ExampleFiles.HowToRewrite}");
    }

    /// <summary>The contract does not grow with each answer that shows the same document.</summary>
    [Fact]
    public async Task An_example_that_several_answers_have_is_in_the_contract_once()
    {
        await using var studio = new Studio();
        var contract = await ContractDocument.Of(studio);
        var written = from one in contract.Operations
                      from response in one.Operation["responses"]!.AsObject()
                      from content in contract.Followed(response.Value!)["content"]?.AsObject() ?? []
                      from text in content.Value!["example"] is { } only ? [only.ToJsonString()]
                          : content.Value["examples"]?.AsObject().Select(example => example.Value!["value"]?.ToJsonString()) ?? []
                      where text is not null && response.Key[0] == '2'
                      select text;
        Assert.Empty(written.GroupBy(text => text).Where(same => same.Skip(1).Any()).Select(same => same.Key));
        var get = contract.Root["paths"]!["/v1/profiles/{key}"]!["get"]!["responses"]!["200"]!["content"]!["application/json"]!;
        Assert.Equal("#/components/examples/putProfile.few-figures", get["examples"]!["answer"]!["$ref"]!.GetValue<string>());
    }
}
