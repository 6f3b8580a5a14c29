using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

public sealed partial class SecurityPageTests
{
    private static readonly string s_page = File.ReadAllText(Repository.File("docs/security.md"));

    public static TheoryData<string> Named => [.. Tests().Matches(s_page).Select(match => match.Groups["name"].Value).Distinct()];

    [Theory]
    [MemberData(nameof(Named))]
    public void Every_test_that_the_page_names_is_there_and_tests_something(string name)
    {
        var type = Assert.Single(typeof(SecurityPageTests).Assembly.GetTypes(), type => type.Name == name);
        Assert.Contains(type.GetMethods(), method => method.GetCustomAttributes(typeof(FactAttribute), inherit: true).Length > 0);
        Assert.Single(Directory.EnumerateFiles(Repository.File("tests"), $"{name}.cs", SearchOption.AllDirectories));
    }

    [Fact]
    public void Each_of_the_ten_has_its_threat_its_defence_and_its_tests()
    {
        var items = Regex.Split(s_page, "^## ", RegexOptions.Multiline, TimeSpan.FromSeconds(5))[1..];
        Assert.Equal(Enumerable.Range(1, 10).Select(number => $"API{number} "),
            items.Select(item => item[..(item.IndexOf(' ', StringComparison.Ordinal) + 1)]));
        foreach (var item in items)
            Assert.Matches("(?s)\\*\\*Threat\\.\\*\\* .+\\*\\*Defence\\.\\*\\* .+\\*\\*Shown by\\*\\* `[A-Za-z]+Tests`", item);
    }

    [GeneratedRegex("`(?<name>[A-Za-z]+Tests)`", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Tests();
}
