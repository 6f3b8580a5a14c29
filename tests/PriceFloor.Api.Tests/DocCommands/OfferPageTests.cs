using System.Text.Json;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>
/// The offers of docs/orders-and-runs.md, on the demo studio: each figure of the page is the service's, and each but the floors of its pieces is
/// worked out here by hand.
/// </summary>
public sealed class OfferPageTests
{
    private const string Page = "docs/orders-and-runs.md";

    [Fact]
    public async Task The_set_of_the_page_is_worked_out_by_hand()
    {
        await using var studio = DocTableTests.DemoFilled();
        var paid = await Set.Of(studio, 5, "");
        var free = await Set.Of(studio, 0, ""","offer":{"shippingCharged":0}""");
        DocTableTests.Holds(Page, ["the set at its listed prices", "how", "buyer pays the postage", "shop pays the postage"],
        [
            ["total", "2 x 58 + 44", .. Both(set => set.Said("total", 160))],
            ["fees", "0.024 x (160 + postage) + 0.25", .. Both(set => Cents(set.Fees))],
            ["kept, if it stays sold", "160 + postage - 6.20 - fees - 3 x 0.80", .. Both(set => Cents(set.Kept))],
            ["lost, if it comes back", "fees + 2 x 6.20 + 3 x 0.80", .. Both(set => Cents(set.Lost))],
            ["net proceeds", "(0.97 x kept - 0.03 x lost) / (1 - 0.03 x 0.8)", .. Both(set => set.Said("netProceeds", set.Net))],
            ["floors", "two pendants and an ornament", .. Both(set => set.Said("floors", (2 * set.Pendant) + set.Ornament))],
            ["above the floors", "net proceeds - floors", .. Both(set => set.Said("aboveFloor", set.Net - set.Floors))],
            ["of that, two pendants", "net proceeds x 116 / 160 - their floors",
                .. Both(set => set.OfItem(0, (set.Net * 116 / 160) - (2 * set.Pendant)))],
            ["of that, an ornament", "net proceeds x 44 / 160 - its floor", .. Both(set => set.OfItem(1, (set.Net * 44 / 160) - set.Ornament))],
            ["most off", "the largest share that still carries", .. Both(set => set.MostOff())],
            ["least total", "the smallest total that still carries", .. Both(set => set.LeastTotal())],
        ]);

        string[] Both(Func<Set, string> cell) => [cell(paid), cell(free)];
    }

    [Fact]
    public async Task The_threshold_of_the_page_is_where_orders_of_one_design_begin_to_carry_free_shipping()
    {
        await using var studio = DocTableTests.DemoFilled();
        var least = (await studio.Post("/v1/order-checks", """{"channel":"web","leastOrder":true,"offer":{"shippingCharged":0}}""")).Json
            .GetProperty("leastOrder");
        Assert.Equal(("48.00", """["RB-014"]"""), (least.GetProperty("threshold").GetRawText(), least.GetProperty("never").GetRawText()));
        var text = await File.ReadAllTextAsync(Repository.File(Page), Studio.Cancellation);
        Assert.Contains("one bead (24.00) does not, and two (48.00) do; every other design carries it alone, so the threshold is 48.00", text,
            StringComparison.Ordinal);
        foreach (var design in least.GetProperty("designs").EnumerateArray())
            Assert.Equal(design.GetProperty("sku").GetString() switch { "RB-014" => "null", "BD-003" => "2", _ => "1" },
                design.GetProperty("pieces").GetRawText());
        var bead = await Floor(studio, "BD-003");
        Assert.True(NetOf(24, 1, 0) < bead && NetOf(48, 2, 0) >= 2 * bead);
    }

    /// <summary>What of an order in the invented web shop reaches the studio: 3 % come back, and 80 % of these are sold again.</summary>
    private static decimal NetOf(decimal total, int pieces, decimal shipping)
    {
        var fees = (0.024m * (total + shipping)) + 0.25m;
        return ((0.97m * (total + shipping - 6.20m - fees - (pieces * 0.80m))) - (0.03m * (fees + 12.40m + (pieces * 0.80m)))) / 0.976m;
    }

    private static async Task<decimal> Floor(Studio studio, string sku) =>
        (await studio.Get($"/v1/designs/{sku}/floor-price?workings=true")).Json.GetProperty("workings").EnumerateArray()
            .Single(line => line.GetProperty("symbol").GetString() == "floor").GetProperty("value").GetDecimal();

    private static string Cents(decimal amount) => Rounding.Nearest(amount, 2).ToString(System.Globalization.CultureInfo.InvariantCulture);

    private sealed record Set(JsonElement Answer, decimal Postage, decimal Pendant, decimal Ornament)
    {
        public decimal Fees => (0.024m * (160 + Postage)) + 0.25m;

        public decimal Kept => 160 + Postage - 6.20m - Fees - (3 * 0.80m);

        public decimal Lost => Fees + (2 * 6.20m) + (3 * 0.80m);

        public decimal Net => ((0.97m * Kept) - (0.03m * Lost)) / 0.976m;

        public decimal Floors => (2 * Pendant) + Ornament;

        public static async Task<Set> Of(Studio studio, decimal postage, string offer)
        {
            var answer = await studio.Post("/v1/order-checks",
                $$"""{"channel":"web","items":[{"sku":"RB-014","pieces":2},{"sku":"OR-002","pieces":1}]{{offer}} }""");
            Assert.True(answer.Status == 200, answer.Text);
            return new Set(answer.Json, postage, await Floor(studio, "RB-014"), await Floor(studio, "OR-002"));
        }

        public string Said(string name, decimal byHand)
        {
            Assert.Equal((name, Cents(byHand)), (name, Cents(Answer.GetProperty(name).GetDecimal())));
            return Answer.GetProperty(name).GetRawText();
        }

        public string OfItem(int item, decimal byHand)
        {
            // The parts are rounded together, so one of them may be a cent beside its own rounding.
            var part = Answer.GetProperty("items")[item].GetProperty("aboveFloor");
            Assert.True(decimal.Abs(part.GetDecimal() - byHand) < 0.011m, $"{part} for {byHand}");
            return part.GetRawText();
        }

        public string MostOff()
        {
            var share = Answer.GetProperty("mostOff").GetDecimal();
            Assert.True(NetOf(160 * (1 - share), 3, Postage) >= Floors && NetOf(160 * (1 - share - 0.001m), 3, Postage) < Floors);
            return Answer.GetProperty("mostOff").GetRawText();
        }

        public string LeastTotal()
        {
            var total = Answer.GetProperty("leastTotal").GetDecimal();
            Assert.True(NetOf(total, 3, Postage) >= Floors && NetOf(total - 0.01m, 3, Postage) < Floors);
            return Answer.GetProperty("leastTotal").GetRawText();
        }
    }
}
