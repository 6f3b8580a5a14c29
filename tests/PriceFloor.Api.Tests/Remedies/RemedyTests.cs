using Xunit;

namespace PriceFloor.Api.Tests.Remedies;

public sealed class RemedyTests
{
    [Fact]
    public async Task Each_way_to_fix_a_price_is_described_in_the_makers_terms()
    {
        // 58.00 nets 56.358 for 2 h at 30.00. Faster: 56.358 / 30 = 1.8786 h = 112.716 min. Spend less: 60,000 - 56.358 x 1,000 = 3,642.
        // Hours: 40 x 60 / 56.358 = 42.585.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var remedies = (await studio.Get("/v1/designs/RB-014/remedies?channel=web")).Json.GetProperty("remedies").EnumerateArray()
            .ToDictionary(one => one.GetProperty("remedy").GetString()!);
        string Raw(string remedy, string name) => remedies[remedy].GetProperty(name).GetRawText();
        Assert.Equal(("58.00", "61.74"), (Raw("raise-the-price", "before"), Raw("raise-the-price", "after")));
        Assert.Equal("\"4.26 pieces a day instead of 4: 112.71 bench minutes a sold piece instead of 120\"", Raw("work-faster", "inWords"));
        Assert.Equal(("60000.00", "56358.00"), (Raw("spend-less", "before"), Raw("spend-less", "after")));
        Assert.Equal(("false", "\"no-materials\"", "null"),
            (Raw("cheaper-materials", "possible"), Raw("cheaper-materials", "reason"), Raw("cheaper-materials", "after")));
        Assert.Equal("\"nothing-is-lost\"", Raw("lose-fewer", "reason"));
        Assert.Equal(("3642.00", "3642.00"), (Raw("earn-taxable-elsewhere", "after"), Raw("earn-net-elsewhere", "after")));
        Assert.Equal(("0.00", "0.00"), (Raw("earn-taxable-elsewhere", "before"), Raw("earn-net-elsewhere", "before")));
        Assert.Equal(("40.00", "42.59"), (Raw("more-hours", "before"), Raw("more-hours", "after")));
    }

    [Fact]
    public async Task Each_way_says_what_its_figures_count()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var measures = (await studio.Get("/v1/designs/RB-014/remedies?channel=web")).Json.GetProperty("remedies").EnumerateArray()
            .Select(one => one.GetProperty("measure").GetString());
        Assert.Equal(["price", "money-a-year", "bench-minutes-a-piece", "bench-minutes-a-piece", "hours-a-week", "money-a-year", "money-a-year",
            "money-a-piece", "good-share", "money-a-piece", "money-an-order", "pieces-an-order", "shop-share", "pieces-a-stall", "usual-discount",
            "channels"], measures);
    }

    [Fact]
    public async Task The_workings_go_on_from_those_of_the_check()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var check = (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58&workings=true")).Json.GetProperty("workings").EnumerateArray()
            .Select(line => line.GetRawText()).ToList();
        var lines = (await studio.Get("/v1/designs/RB-014/remedies?channel=web&workings=true"))
            .Json.GetProperty("workings").EnumerateArray().ToList();
        Assert.Equal(check, lines.Take(check.Count).Select(line => line.GetRawText()));
        Assert.Equal(
            ["room", "sellingCost", "gap", "fixedHours", "enoughHours", "enoughMinutes", "cut", "enoughForBench", "enoughMaterials", "newMaterials",
                "weekHours", "moreTaxableIncome", "profitLeft", "lowerTax", "leftAfterTax", "moreNetIncome", "part1", "balancedHours",
                "part2", "balancedCut"],
            lines.Skip(check.Count).Select(line => line.GetProperty("symbol").GetString()));
        Assert.Equal(
            """{"symbol":"cut","label":"less for bench time to recover, a year","formula":"max(0, benchMustEarn - room * carryingHours / benchHours)","value":3642}""",
            lines.Single(line => line.GetProperty("symbol").GetString() == "cut").GetRawText());
    }

    [Fact]
    public async Task A_week_that_is_too_long_is_flagged_and_a_price_below_the_materials_helped_by_nothing()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":4},"materials":[{"amount":5}]}""");
        var low = (await studio.Get("/v1/designs/RB-014/remedies?channel=web&price=30")).Json.GetProperty("remedies").EnumerateArray()
            .Single(one => one.GetProperty("remedy").GetString() == "more-hours");
        Assert.Equal("long-week", low.GetProperty("flag").GetString());
        var below = (await studio.Get("/v1/designs/RB-014/remedies?channel=web&price=5")).Json;
        Assert.Contains("price-below-materials",
            below.GetProperty("remedies").EnumerateArray().Select(one => one.TryGetProperty("reason", out var reason) ? reason.GetString() : ""));
        Assert.Equal(System.Text.Json.JsonValueKind.Null, below.GetProperty("balanced").ValueKind);
    }

    [Fact]
    public async Task What_is_unknown_is_named()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        (await studio.Get("/v1/designs/NOPE/remedies?channel=web")).IsProblem(404, "not-found");
        (await studio.Get("/v1/designs/RB-014/remedies?channel=nope")).IsProblem(422, "unknown-reference");
        Assert.Equal(["channel"], (await studio.Get("/v1/designs/RB-014/remedies")).IsProblem(422, "invalid-input").Pointers);
    }
}
