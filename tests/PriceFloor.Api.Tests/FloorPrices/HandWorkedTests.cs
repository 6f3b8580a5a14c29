using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.FloorPrices;

/// <summary>
/// The documents of the published contract, calculated by hand from the model's formulas; the last digits are the model's, not the program's.
/// </summary>
public sealed class HandWorkedTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    // The year (see the requirement's test): 39,319.7499 to recover over 1,305.6 bench hours.
    private const decimal PerHour = 39319.74986890414m / 1305.6m; // 30.1162...
    private const decimal Starts = 1 / (0.95m * 0.98m); // 1.074114 pieces started for a good one
    private const decimal Annealed = 1 / 0.98m; // 1.020408 enter the kiln
    private const decimal Sold = 0.9m;

    // 34 x 1.074114 + 20/24 x 1.020408 + 9 + 15/12 x 1.074114 = 47.7129 min, over 60 and 0.9
    private const decimal Hours = (34 * Starts + 20m / 24 * Annealed + 9 + 15m / 12 * Starts) / 60 / Sold; // 0.883571

    // rod 38 x 0.062 / 0.92 for each start, current 0.21 x 16 / 24 for each annealed, box 1.55 for each finished
    private const decimal Materials = (38 * 0.062m / 0.92m * Starts + 0.21m * 16 / 24 * Annealed + 1.55m) / Sold; // 4.937247

    private const decimal Seconds = 0.4m * 11 * (Starts - 1) / Sold; // 0.362334
    private const decimal Floor = PerHour * Hours + Materials - Seconds; // 26.609838 + 4.937247 - 0.362334 = 31.184751

    [Fact]
    public async Task The_contracts_pendant_has_this_floor()
    {
        // 31.184751 up; twice 31.19; 1,305.6 h / 0.883571 h = 1,477.6 pieces
        var studio = shared.Of("Production");
        await HasTheContractsShop(studio);
        var answer = (await studio.Get("/v1/designs/RB-014/floor-price")).Text;
        Assert.StartsWith(
            """{"currency":"USD","floor":31.19,"wholesale":31.19,"retail":62.38,"benchHours":0.8836,"benchCost":26.61,"materials":4.94,"secondsCredit":0.36,"startsPerGoodPiece":1.074114,"piecesPerYear":1477,"floorWithinLimit":null,"oneRetailPrice":{"channels":["web"],"floorPrice":35.00,"targetPrice":63.00},"channels":[{"channel":"web","currency":"USD","floor":31.19,"sellingHours":0,"floorPrice":35.00,"targetPrice":63.00,"listedPrice":58.00,"verdict":"below-target"}],"basis":{"profile":"main@1","design":"RB-014@1","channels":["web@1"]},""",
            answer, StringComparison.Ordinal);
        Assert.Equal(31.19m, decimal.Ceiling(Floor * 100) / 100);
    }

    [Fact]
    public async Task The_contracts_web_shop_keeps_this_much_of_58()
    {
        // An order is 1.4 pieces: 81.20 and 5.00 for shipping; the card takes 0.024 x 86.20 + 0.25 = 2.3188.
        // Kept: 58 + (5 - 6.20 - 2.3188) / 1.4 - 0.80 = 54.6866; lost on a return: (2.3188 + 12.40) / 1.4 + 0.80 = 11.3134.
        // Net: (0.97 x 54.6866 - 0.03 x 11.3134) / (1 - 0.03 x 0.8) = 54.0026; less 31.1848 leaves 22.8179.
        // At 34.4585 it would be the floor: 1 - 34.4585 / 58 = 40.588 % may be taken off, in thousandths 0.405.
        var studio = shared.Of("Production");
        await HasTheContractsShop(studio);
        var answer = (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58.00")).Text;
        Assert.StartsWith(
            """{"verdict":"below-target","carriesItsShare":true,"floorPrice":35.00,"targetPrice":63.00,"price":58.00,"currency":"USD","netProceeds":54.00,"aboveFloor":22.82,"mostOff":0.405,"earnedPerBenchHour":55.94,"perBenchHour":30.12,"takeHomePerHourAtThisPrice":27.81,"basis":""",
            answer, StringComparison.Ordinal);
        Assert.Equal(54.00m, decimal.Round(Net(58), 2));
        Assert.Equal(55.94m, decimal.Round((Net(58) - Materials + Seconds) / Hours, 2));
        Assert.True(Net(34) < Floor && Net(35) >= Floor); // whole dollars only
    }

    [Theory]
    [InlineData("34.00", "below-floor")]
    [InlineData("35.00", "below-target")]
    [InlineData("62.00", "below-target")]
    [InlineData("63.00", "meets-target")] // 2 x 31.19 = 62.38
    public async Task The_contracts_verdicts_turn_here(string price, string verdict)
    {
        var studio = shared.Of("Production");
        await HasTheContractsShop(studio);
        Assert.Equal(verdict, (await studio.Get($"/v1/price-checks?sku=RB-014&channel=web&price={price}")).Json.GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task Workings_lead_to_the_answer_unrounded_and_each_symbol_occurs_once()
    {
        var studio = shared.Of("Production");
        await HasTheContractsShop(studio);
        foreach (var path in new[]
        {
            "/v1/profiles/main/requirement?workings=true",
            "/v1/designs/RB-014/floor-price?workings=true",
            "/v1/price-checks?sku=RB-014&channel=web&price=58&workings=true",
        })
        {
            var lines = (await studio.Get(path)).Json.GetProperty("workings").EnumerateArray().ToList();
            var symbols = lines.Select(line => line.GetProperty("symbol").GetString()!).ToList();
            Assert.Equal(symbols.Distinct(), symbols);
            Assert.Contains(lines, line => line.GetProperty("symbol").GetString() == "perBenchHour"
                && Math.Abs(line.GetProperty("value").GetDecimal() - PerHour) < 0.000000001m);
            Assert.All(lines, line => Assert.NotEqual("", line.GetProperty("label").GetString() + line.GetProperty("formula").GetString()));
            Assert.Equal(JsonValueKind.Number, lines[^1].GetProperty("value").ValueKind);
        }

        Assert.False((await studio.Get("/v1/designs/RB-014/floor-price?workings=false")).Json.TryGetProperty("workings", out _));
    }

    private static decimal Net(decimal price)
    {
        var fee = 0.024m * (1.4m * price + 5) + 0.25m;
        var kept = price + (5 - 6.20m - fee) / 1.4m - 0.80m;
        var lost = fee / 1.4m + (6.20m + 6.20m) / 1.4m + 0.80m;
        return (0.97m * kept - 0.03m * lost) / (1 - 0.03m * 0.8m);
    }

    private static async Task HasTheContractsShop(Studio studio)
    {
        await studio.Has("/v1/profiles/main", Sample.Rich);
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        await studio.Has("/v1/channels/web", Sample.RichChannel);
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":58.00}""");
    }
}
