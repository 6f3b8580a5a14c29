using Xunit;
using static PriceFloor.Pricing.Tests.Planning.RemedyStudio;

namespace PriceFloor.Pricing.Tests.Planning;

/// <summary>Where each way to fix a price ends, and what is said beyond that: 2,000 bench hours at 24.00, sold where nothing is taken.</summary>
public sealed class RemedyReasonsTests
{
    private static readonly CostProfile s_profile = AtTwentyFour;

    private static readonly Making s_hour = AnHour;

    [Fact]
    public void A_price_below_its_materials_is_mended_by_no_time_and_no_income()
    {
        // 9.00 for 10.00 of materials.
        var remedies = Remedies.Of(Check(s_profile, s_hour, 10, 9)).Value;
        Assert.Equal(
            ["WorkFaster price-below-materials 60", "SpendLess price-below-materials 48000", "CheaperMaterials more-than-materials 10",
                "LoseFewer nothing-is-lost 1", "EarnTaxableElsewhere price-below-materials 0", "EarnNetElsewhere price-below-materials 0",
                "NewDesignMinutes price-below-materials 60", "NewDesignMaterials price-below-materials 10", "MoreHours price-below-materials 40",
                "ChargeMoreShipping no-shipping 0", "MorePiecesAnOrder nothing-per-order 1", "LowerShopShare no-shop-share 0",
                "FullerStall no-stall -1", "LessDiscount no-discount 0", "SellElsewhere nowhere-else -1"],
            remedies.All.Where(remedy => !remedy.Possible).Select(Text));
        Assert.Null(remedies.Balanced);
    }

    [Fact]
    public void A_price_of_just_its_materials_is_mended_by_a_year_that_costs_nothing()
    {
        // 10.00 for 10.00 of materials leave nothing an hour: all of 48,000 must go. Profit there is none, so net income helps nothing.
        var remedies = Remedies.Of(Check(s_profile, s_hour, 10, 10)).Value;
        Assert.Equal(["RaiseThePrice 34", "SpendLess 0", "EarnTaxableElsewhere 48000"],
            remedies.All.Where(remedy => remedy.Possible).Select(remedy => $"{remedy.Kind} {Rounding.Trim(remedy.After!.Value)}"));
        Assert.Equal("price-below-materials", Way(remedies, RemedyKind.WorkFaster).Reason);
        Assert.Equal("price-below-materials", Way(remedies, RemedyKind.NewDesignMinutes).Reason);
        Assert.Equal("price-below-materials", Way(remedies, RemedyKind.MoreHours).Reason);
        Assert.Equal("costs-remain", Way(remedies, RemedyKind.EarnNetElsewhere).Reason);
    }

    [Fact]
    public void A_sale_that_brings_the_studio_nothing_can_be_helped_by_its_price_alone()
    {
        var packing = new Channel { Sells = Sells.Retail, Currency = "USD", CostPerPiece = 5 };
        foreach (var price in new[] { 4.99m, 5 }) // a cent short of the packing, and just the packing
        {
            var costs = Remedies.Of(Check(s_profile, s_hour, 0, price, packing)).Value;
            Assert.Equal(RemedyKind.RaiseThePrice, Assert.Single(costs.All, remedy => remedy.Possible).Kind);
            Assert.All(costs.All.Where(remedy => remedy.Kind is > RemedyKind.RaiseThePrice and < RemedyKind.ChargeMoreShipping),
                remedy => Assert.Equal("nothing-reaches-the-studio", remedy.Reason));
            Assert.Equal(["no-shipping", "nothing-per-order", "no-shop-share", "no-stall", "no-discount", "nowhere-else"],
                costs.All.Where(remedy => remedy.Kind >= RemedyKind.ChargeMoreShipping).Select(remedy => remedy.Reason!.Word));
            Assert.Null(costs.Balanced);
            Assert.Equal(Enum.GetValues<RemedyKind>(), costs.All.Select(remedy => remedy.Kind));
        }

        // Where nothing is due, a sale that brings nothing is short of nothing.
        var free = Remedies.Of(Check(s_profile with { Expenses = [] }, s_hour, 0, 5, packing)).Value;
        Assert.DoesNotContain(free.All, remedy => remedy.Reason?.Word == "nothing-reaches-the-studio");
    }

    [Fact]
    public void No_more_can_be_saved_than_is_spent_nor_earned_for_more_than_the_household_needs()
    {
        // Half of 48,000 is spent, half lived on. At 12.00 an hour 24,000 are missing, at 11.99 it is 24,020.
        var halves = s_profile with
        {
            Expenses = [new Expense { Amount = 24000, Per = Per.Year }],
            Household = [new HouseholdLine { Amount = 2000, Per = Per.Month }],
        };
        var half = Remedies.Of(Check(halves, s_hour, 0, 12)).Value;
        Assert.Equal((24000m, 24000m), (Way(half, RemedyKind.SpendLess).After, Way(half, RemedyKind.EarnNetElsewhere).After));
        var less = Remedies.Of(Check(halves, s_hour, 0, 11.99m)).Value;
        Assert.Equal(("more-than-is-spent", "costs-remain"), (Way(less, RemedyKind.SpendLess).Reason, Way(less, RemedyKind.EarnNetElsewhere).Reason));
        Assert.Equal(24020m, Way(less, RemedyKind.EarnTaxableElsewhere).After);
    }

    [Fact]
    public void The_least_pay_must_be_earned_whatever_else_comes_in()
    {
        // 23,000 of expenses; 24,000 to live on and 1,000 of principal. Pay of 20,000 and the principal are 21,000, so 4,000 of the 25,000 may come
        // from elsewhere: at 22.00 an hour, not at 21.99.
        var paid = s_profile with
        {
            Expenses = [new Expense { Amount = 23000, Per = Per.Year }, new Expense { Amount = 1000, Per = Per.Year, Deductible = false }],
            Household = [new HouseholdLine { Amount = 24000, Per = Per.Year }],
            Pay = new Pay { Amount = 20000, Per = PayPer.Year },
        };
        Assert.Equal(4000m, Way(Remedies.Of(Check(paid, s_hour, 0, 22)).Value, RemedyKind.EarnNetElsewhere).After);
        Assert.Equal("pay-decides", Way(Remedies.Of(Check(paid, s_hour, 0, 21.99m)).Value, RemedyKind.EarnNetElsewhere).Reason);
        // Pay that takes all of the profit is in nobody's way where nothing is missing.
        var all = paid with { Pay = new Pay { Amount = 30000, Per = PayPer.Year } };
        Assert.Equal((0m, 0m), (Way(Remedies.Of(Check(all, s_hour, 0, 30)).Value, RemedyKind.EarnNetElsewhere).Before,
            Way(Remedies.Of(Check(all, s_hour, 0, 30)).Value, RemedyKind.EarnNetElsewhere).After));
    }

    [Fact]
    public void Materials_can_be_saved_down_to_nothing()
    {
        // 24.00 of time and 6.00 of materials: at 24.00 nothing is left for them, at 23.99 less than nothing.
        Assert.Equal((6m, 0m), (Way(At(24), RemedyKind.CheaperMaterials).Before, Way(At(24), RemedyKind.CheaperMaterials).After));
        Assert.Equal("more-than-materials", Way(At(23.99m), RemedyKind.CheaperMaterials).Reason);
        Assert.Equal((0m, null), (Way(At(24), RemedyKind.NewDesignMaterials).After, Way(At(24), RemedyKind.NewDesignMaterials).Reason));
        Assert.Equal("time-takes-it-all", Way(At(23.99m), RemedyKind.NewDesignMaterials).Reason);
        Assert.Equal((6m, 6m), (Way(At(30), RemedyKind.CheaperMaterials).Before, Way(At(30), RemedyKind.CheaperMaterials).After));
        Assert.Equal("no-materials", Way(Remedies.Of(Check(s_profile, s_hour, 0, 12)).Value, RemedyKind.CheaperMaterials).Reason);

        static Remedies At(decimal price) => Remedies.Of(Check(s_profile, s_hour, 6, price)).Value;
    }

    [Fact]
    public void A_price_below_these_materials_is_no_measure_for_a_new_design_but_says_how_much_cheaper_they_must_be()
    {
        // 30.00 for 40.00 of materials and 24.00 of time: 6.00 of materials would be carried.
        var remedies = Remedies.Of(Check(s_profile, s_hour, 40, 30)).Value;
        Assert.Equal((null, "price-below-materials"),
            (Way(remedies, RemedyKind.NewDesignMaterials).After, Way(remedies, RemedyKind.NewDesignMaterials).Reason?.Word));
        Assert.Equal((40m, 6m), (Way(remedies, RemedyKind.CheaperMaterials).Before, Way(remedies, RemedyKind.CheaperMaterials).After));
    }

    [Fact]
    public void Where_bench_time_has_nothing_to_recover_any_time_is_paid_for_but_not_any_material()
    {
        var free = s_profile with { Expenses = [] };
        Assert.Equal("bench-must-earn-nothing", Way(Remedies.Of(Check(free, s_hour, 10, 10)).Value, RemedyKind.NewDesignMinutes).Reason);
        Assert.Equal("bench-must-earn-nothing", Way(Remedies.Of(Check(free, s_hour, 10, 12)).Value, RemedyKind.NewDesignMinutes).Reason);
        Assert.Equal("price-below-materials", Way(Remedies.Of(Check(free, s_hour, 10, 9.99m)).Value, RemedyKind.NewDesignMinutes).Reason);
        Assert.Equal("price-below-materials", Way(Remedies.Of(Check(free, s_hour, 10, 9.99m)).Value, RemedyKind.WorkFaster).Reason);
    }

    [Fact]
    public void A_price_above_its_floor_leaves_every_figure_as_it_is()
    {
        // 24.00 of time and 6.00 of materials, sold at 35.00.
        var remedies = Remedies.Of(Check(s_profile, s_hour with { GoodShare = 1 }, 6, 35)).Value;
        var same = remedies.All.Where(remedy =>
            remedy.Possible && remedy.Kind is not (RemedyKind.NewDesignMinutes or RemedyKind.NewDesignMaterials)).ToList();
        Assert.Equal([35m, 60m, 48000m, 6m, 0m, 0m, 40m, null], same.OrderBy(remedy => remedy.Kind).Select(remedy => remedy.Before));
        Assert.All(same, remedy =>
            Assert.Equal((remedy.Before, "Nothing needs to change: the price carries its part of the year."), (remedy.After, remedy.InWords)));
    }

    [Fact]
    public void Where_nothing_is_short_the_balanced_proposal_changes_nothing()
    {
        // Nine of ten sell: 66.666... min a sold piece. At 2,400.00 an hour a rounded 66.67 min would be 13 cents dearer, and still nothing is short.
        var few = s_profile with { SoldShare = 0.9m };
        var balanced = Remedies.Of(Check(few, s_hour, 25, 60)).Value.Balanced!;
        Assert.Equal((null, null, null, true), (balanced.BenchMinutes, balanced.Materials, balanced.Cut, balanced.CarriesItsShare));
        Assert.Empty(balanced.Parts);
        var dear = few with { Expenses = [new Expense { Amount = 4_800_000, Per = Per.Year }] };
        Assert.True(Remedies.Of(Check(dear, s_hour, 0, 2666.67m)).Value.Balanced!.CarriesItsShare); // 2,400 / 0.9 = 2,666.67
    }

    [Fact]
    public void Losing_none_may_just_be_enough()
    {
        // An hour at 24.00, of which a fifth is lost: 30.00. Without any loss 24.00 is enough, 23.99 is not.
        var lossy = s_hour with { GoodShare = 0.8m };
        Assert.Equal((0.8m, 1m), (Way(Remedies.Of(Check(s_profile, lossy, 0, 24)).Value, RemedyKind.LoseFewer).Before,
            Way(Remedies.Of(Check(s_profile, lossy, 0, 24)).Value, RemedyKind.LoseFewer).After));
        Assert.Equal("not-enough", Way(Remedies.Of(Check(s_profile, lossy, 0, 23.99m)).Value, RemedyKind.LoseFewer).Reason);
        // A second that brings 60.00 for an hour of 24.00 makes losses pay, whatever the price.
        var dear = Check(s_profile, lossy, 0, 10, seconds: new Seconds { Share = 1, Price = 60 });
        Assert.Equal(("seconds-pay-more-than-they-cost", 0.8m),
            (Way(Remedies.Of(dear).Value, RemedyKind.LoseFewer).Reason?.Word, Way(Remedies.Of(dear).Value, RemedyKind.LoseFewer).Before));
    }

    [Fact]
    public void Of_steps_that_lose_alike_the_first_is_bettered()
    {
        var making = new Making
        {
            Steps = [new Step { HandsOnMinutes = 10 }, new Step { HandsOnMinutes = 20, GoodShare = 0.8m },
                new Step { HandsOnMinutes = 30, GoodShare = 0.8m }],
        };
        Assert.Contains(" in step 2 instead of ", Way(Remedies.Of(Check(s_profile, making, 0, 30)).Value, RemedyKind.LoseFewer).InWords,
            StringComparison.Ordinal);
    }

    private static string Text(Remedy remedy) =>
        $"{remedy.Kind} {remedy.Reason} {Rounding.Trim(remedy.Before ?? -1).ToString(System.Globalization.CultureInfo.InvariantCulture)}";
}
