using Xunit;

namespace PriceFloor.Pricing.Tests.Explaining;

/// <summary>The example studio's pendant in its web shop, and its workings line by line.</summary>
internal static class WorkingsInWords
{
    internal static StudioYear Year { get; } = StudioYear.Of(ExampleStudio.Profile, default).Value;

    internal static UnitCost Pendant { get; } = UnitCost.Of(ExampleStudio.Pendant, Year).Value;

    internal static ChannelPrices Prices { get; } =
        ChannelPrices.Of(FloorPrice.Of(Pendant, null).Value, SellingTerms.Of(ExampleStudio.WebShop).Value).Value;

    internal static void Says(string expected, IEnumerable<Working> lines) =>
        Assert.Equal(expected.Split('\n'), lines.Select(line =>
            expected.Contains(" = ", StringComparison.Ordinal) ? $"{line.Symbol}: {line.Label} = {line.Formula}" : $"{line.Symbol}: {line.Label}"));
}
