using System.Text.RegularExpressions;
using PriceFloor.Api.Tests.Contract;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

public sealed partial class ReferencePageTests
{
    [Fact]
    public void The_pages_of_reference_are_what_the_code_says()
    {
        Assert.Equal(ReferencePages.All.Keys.Order(),
            Directory.EnumerateFiles(Repository.File("docs/reference")).Select(file => Path.GetFileName(file)).Order());
        foreach (var (name, text) in ReferencePages.All)
            if (!string.Equals(text, File.ReadAllText(Repository.File($"docs/reference/{name}")), StringComparison.Ordinal))
            {
                Directory.CreateDirectory(Repository.File("artifacts/reference"));
                File.WriteAllText(Repository.File($"artifacts/reference/{name}"), text);
                Assert.Fail($"docs/reference/{name} differs from the code; what it should say is written beside: "
                    + $"cp artifacts/reference/{name} docs/reference/{name}");
            }
    }

    /// <summary>Every field that the glossary names is in the contract.</summary>
    [Fact]
    public async Task Every_field_that_the_glossary_names_is_in_the_contract()
    {
        await using var studio = new Studio();
        var contract = (await ContractDocument.Of(studio)).Root.ToJsonString();
        var glossary = await File.ReadAllLinesAsync(Repository.File("docs/glossary.md"), Studio.Cancellation);
        var fields = glossary.Where(line => line.StartsWith('|'))
            .SelectMany(line => InBackquotes().Matches(line))
            .Select(match => match.Groups["name"].Value).Distinct().ToList();
        Assert.True(fields.Count > 30);
        Assert.All(fields, field => Assert.Contains($"\"{field}\"", contract, StringComparison.Ordinal));
    }

    [GeneratedRegex("`(?<name>[a-zA-Z]+)`", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex InBackquotes();
}
