using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.Conventions;

public sealed partial class LicencePageTests
{
    [Fact]
    public async Task Every_package_of_the_service_is_on_the_page_with_its_version_and_a_licence()
    {
        using var locked =
            JsonDocument.Parse(await File.ReadAllTextAsync(Repository.File("src/PriceFloor.Api/packages.lock.json"), Studio.Cancellation));
        var packages = locked.RootElement.GetProperty("dependencies").EnumerateObject().SelectMany(framework => framework.Value.EnumerateObject())
            .Where(package => package.Value.GetProperty("type").GetString() != "Project")
            .Select(package => $"{package.Name} {package.Value.GetProperty("resolved").GetString()}").Distinct();
        var page = await File.ReadAllTextAsync(Repository.File("docs/licences.md"), Studio.Cancellation);
        var rows = Row().Matches(page).Select(row => $"{row.Groups["name"].Value} {row.Groups["version"].Value}");

        Assert.Equal(packages.Order(StringComparer.OrdinalIgnoreCase), rows);
    }

    [GeneratedRegex(@"^\| (?<name>[A-Za-z0-9._]+) \| (?<version>[0-9][^ ]*) \| [A-Z][^|]+ \|$",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Row();
}
