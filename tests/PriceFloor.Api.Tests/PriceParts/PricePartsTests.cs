using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.PriceParts;

public sealed class PricePartsTests
{
    [Fact]
    public async Task The_letters_of_a_bar_follow_its_parts_from_a_on_and_a_long_name_is_not_cut()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var name = string.Join(' ', Enumerable.Range(1, 20).Select(i => $"word{i}"));
        await studio.Has("/v1/channels/web", Sample.Shop.Replace("{\"sells\"", $"{{\"name\":\"{name}\",\"sells\"", StringComparison.Ordinal));
        var words = System.Xml.Linq.XDocument.Parse((await studio.Get("/v1/designs/RB-014/price-parts.svg?channel=web")).Text).Root!.Descendants()
            .Where(one => one.Name.LocalName == "text").Select(one => one.Value).ToList();
        var letters = words.Where(text => text.Length > 2 && text[1] == ' ').Select(text => text[0]).ToList();
        Assert.True(letters.Count > 2);
        Assert.Equal(Enumerable.Range(0, letters.Count).Select(place => (char)('a' + place)), letters);
        Assert.Contains(name, string.Join(' ', words), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_listed_price_goes_to_fees_expenses_and_household_and_is_short()
    {
        // 58.00 x 2.4 % + 0.25 = 1.642; 24.00 and 36.00 of the floor of 60.00; 3.642 short.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var channel = (await studio.Get("/v1/designs/RB-014/price-parts")).Json.GetProperty("channels")[0];
        Assert.Equal("\"web\" 58.00 \"listed\" \"below-floor\" 58.00", Raw(channel, "channel", "price", "priceIs", "verdict", "paid"));
        Assert.Equal(["usual-discount 0.00", "sales-tax 0.00", "shop-share 0.00", "fees 1.64", "shipping 0.00", "packing-and-stall 0.00",
            "returns 0.00", "losses 0.00", "development 0.00", "materials 0.00", "expenses 24.00", "tax 0.00", "household 36.00",
            "above-floor -3.64"], Parts(channel));
        Assert.Equal("0.02831", channel.GetProperty("parts")[3].GetProperty("share").GetRawText()); // 1.642 / 58
    }

    [Fact]
    public async Task Without_a_listed_price_it_is_the_floor_price_and_a_price_can_be_asked_about()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Delete("/v1/designs/RB-014/prices/web");
        var floor = (await studio.Get("/v1/designs/RB-014/price-parts?channel=web")).Json.GetProperty("channels")[0];
        Assert.Equal("61.74 \"floor-price\" \"below-target\"", Raw(floor, "price", "priceIs", "verdict"));
        Assert.Contains("fees 1.73", Parts(floor)); // 61.74 x 2.4 % + 0.25 = 1.73176
        Assert.Contains("above-floor 0.01", Parts(floor)); // 61.74 - 1.73176 - 60 = 0.00824
        var asked = (await studio.Get("/v1/designs/RB-014/price-parts?channel=web&price=120.00")).Json.GetProperty("channels")[0];
        Assert.Equal("120.00 \"asked\" \"meets-target\"", Raw(asked, "price", "priceIs", "verdict"));
        Assert.Contains("above-floor 56.87", Parts(asked)); // 120 - 3.13 - 60
    }

    [Fact]
    public async Task A_channel_without_a_price_says_why()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/abroad", """{"sells":"retail","currency":"EUR"}""");
        var abroad = (await studio.Get("/v1/designs/RB-014/price-parts")).Json.GetProperty("channels")[0];
        Assert.Equal("\"abroad\" null \"currency-mismatch\" []", Raw(abroad, "channel", "price", "reason", "parts"));
        (await studio.Get("/v1/designs/RB-014/price-parts?channel=abroad")).IsProblem(422, "currency-mismatch");
    }

    [Fact]
    public async Task Workings_lead_to_every_part_of_one_channel()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var workings = (await studio.Get("/v1/designs/RB-014/price-parts?channel=web&workings=true")).Json.GetProperty("workings").EnumerateArray()
            .ToDictionary(line => line.GetProperty("symbol").GetString()!, line => line.GetProperty("value").GetRawText());
        Assert.Equal(("24", "36", "1.642", "-3.642"),
            (workings["expensesPart"], workings["householdPart"], workings["feesPart"], workings["aboveFloor"]));
        Assert.Equal(["channel"], (await studio.Get("/v1/designs/RB-014/price-parts?workings=true")).IsProblem(422, "invalid-input").Pointers);
    }

    [Fact]
    public async Task What_is_missing_or_unknown_is_named()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        (await studio.Get("/v1/designs/NOPE/price-parts")).IsProblem(404, "not-found");
        Assert.Equal(["channel"], (await studio.Get("/v1/designs/RB-014/price-parts?channel=nope")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["channel"], (await studio.Get("/v1/designs/RB-014/price-parts?price=3")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["price"],
            (await studio.Get("/v1/designs/RB-014/price-parts?channel=web&price=0.001")).IsProblem(422, "invalid-input").Pointers);
    }

    private static string Raw(JsonElement element, params string[] names) =>
        string.Join(' ', names.Select(name => element.GetProperty(name).GetRawText()));

    private static IEnumerable<string> Parts(JsonElement channel) => channel.GetProperty("parts").EnumerateArray()
        .Select(part => $"{part.GetProperty("part").GetString()} {part.GetProperty("amount").GetRawText()}");
}
