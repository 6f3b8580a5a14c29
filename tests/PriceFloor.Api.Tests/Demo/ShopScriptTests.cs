using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Demo;
using PriceFloor.Api.Tests.Conventions;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.Demo;

/// <summary>
/// The expected output of the scripts in docs/scripts agrees with the service's answers for their sheet; `.ci/scripts` runs the scripts themselves.
/// </summary>
public sealed class ShopScriptTests
{
    private const string Path = "/v1/price-checks/batch?skuColumn=Item&channelColumn=Shop&priceColumn=List%20price";

    [Fact]
    public async Task The_demo_answers_the_sheet_as_the_scripts_are_to_print_it()
    {
        await using var studio = new Studio();
        studio.Services.GetRequiredService<DemoStudio>().Fill(studio.Services.GetRequiredService<Store>());
        var sheet = await File.ReadAllBytesAsync(Repository.File("docs/scripts/listings.csv"), Studio.Cancellation);
        var answer = await studio.SendBytes("POST", Path, sheet, "text/csv", headers: ("Accept", "application/x-ndjson"));

        var lines = answer.Text.TrimEnd('\n').Split('\n').SkipLast(1);
        var printed = lines.Select(line => Printed(JsonDocument.Parse(line).RootElement)).OfType<string>();
        Assert.Equal(await File.ReadAllLinesAsync(Repository.File("docs/scripts/expected.txt"), Studio.Cancellation), printed);
    }

    private static string? Printed(JsonElement answer)
    {
        var name = answer.TryGetProperty("sku", out var sku)
            ? sku.GetString()
            : $"line {answer.GetProperty("errors")[0].GetProperty("line").GetRawText()}";
        name += $" on {answer.GetProperty("channel").GetString()}";
        return !answer.TryGetProperty("carriesItsShare", out var carries)
                ? $"{name} was not answered: "
                    + $"{string.Join(' ', answer.GetProperty("errors").EnumerateArray().Select(error => error.GetProperty("detail").GetString()))}"
            : carries.GetBoolean() ? null
            : $"{name} does not carry its share: floor {answer.GetProperty("floorPrice").GetRawText()}, "
                + $"target {answer.GetProperty("targetPrice").GetRawText()}";
    }
}
