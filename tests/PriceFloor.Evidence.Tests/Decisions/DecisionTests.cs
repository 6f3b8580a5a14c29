using PriceFloor.Evidence.Decisions;
using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Tests.Demand;
using Xunit;

namespace PriceFloor.Evidence.Tests.Decisions;

/// <summary>One word for a design: the first rule that holds.</summary>
public sealed class DecisionTests
{
    /// <summary>The worked example: 36.90 to 37.72 earned of 45.00, 60.51 against 52.00 * 1.15 = 59.80, 1.46 orders a week against 0.56.</summary>
    private static readonly DecisionFacts s_pendant = new()
    {
        Orders = 93,
        DaysOnOffer = 371,
        PerHour = 45,
        Earned = (36.90m, 37.72m),
        Price = 52,
        FloorPrice = 60.51m,
        Rate = 1.4635m,
        MedianRate = 29m / 52,
        Contribution = 3602.92m,
        Scarcity = 0.8m,
        PiecesToBeHad = 400,
        NextPieces = 17,
    };

    [Fact]
    public void The_pendant_is_to_be_redesigned()
    {
        var decision = Decision.Of(s_pendant);
        Assert.Equal((DecisionWord.Redesign, false), (decision.Word, decision.IsTooCloseToTell));
        Assert.Equal([DecisionGround.Minutes, DecisionGround.Take], decision.Because);
        Assert.Equal([("fewOrders", 8m), ("fewDays", 90m), ("raiseWithin", 1.15m)], decision.Assumed.Select(rule => (rule.Name, rule.Value)));
    }

    [Fact]
    public void Seven_orders_or_89_days_are_too_few()
    {
        Assert.Equal(DecisionWord.Wait, Word(s_pendant with { Orders = 7 }));
        Assert.Equal(DecisionWord.Wait, Word(s_pendant with { DaysOnOffer = 89 }));
        Assert.Equal(DecisionWord.Redesign, Word(s_pendant with { Orders = 8, DaysOnOffer = 90 }));
        Assert.Equal(DecisionWord.Wait, Word(s_pendant with { Earned = null }));
    }

    [Fact]
    public void What_earns_its_hours_is_kept()
    {
        var earning = s_pendant with { Earned = (45m, 50m), SoldOutShare = 0.24m, NextPieces = 499 };
        Assert.Equal(DecisionWord.Keep, Word(earning));
        Assert.Equal(DecisionWord.Raise, Word(earning with { SoldOutShare = 0.25m }));
        // 400 * 1.25 = 500.
        Assert.Equal(DecisionWord.Raise, Word(earning with { NextPieces = 500 }));
        Assert.Equal(DecisionWord.Keep, Word(earning with { SoldOutShare = null, NextPieces = null }));
    }

    [Fact]
    public void Where_45_lies_within_what_was_earned_it_is_too_close_to_tell()
    {
        var facts = s_pendant with { Earned = (44.99m, 45m) };
        var decision = Decision.Of(facts);
        Assert.Equal("too-close-to-tell", Assert.Single(new DesignDecision(facts, decision).Warnings("/decision")).Code.Word);
        Assert.Equal((DecisionWord.Keep, true), (decision.Word, decision.IsTooCloseToTell));
    }

    [Fact]
    public void A_floor_price_within_15_percent_is_asked() => Assert.Equal(DecisionWord.Raise, Word(s_pendant with { FloorPrice = 59.80m }));

    [Fact]
    public void Minutes_that_were_reached_before_are_reached_again() =>
        Assert.Equal(DecisionWord.MakeFaster, Word(s_pendant with { EnoughMinutesWereReached = true }));

    [Fact]
    public void What_few_want_fills_idle_hours_or_is_dropped()
    {
        var seldom = s_pendant with { Rate = 0.5m };
        Assert.Equal(DecisionWord.FillIn, Word(seldom));
        Assert.Equal(DecisionWord.Drop, Word(seldom with { Scarcity = 1 }));
        Assert.Equal(DecisionWord.Drop, Word(seldom with { Scarcity = null }));
        Assert.Equal(DecisionWord.Drop, Word(seldom with { Contribution = 0 }));
    }

    /// <summary>Without a price or a rate the rules that need them do not hold.</summary>
    [Fact]
    public void What_nobody_knows_decides_nothing() =>
        Assert.Equal(DecisionWord.FillIn, Word(s_pendant with { Price = null, FloorPrice = null, Rate = null, MedianRate = null }));

    /// <summary>48.047 * 0.8695 * 0.8610 = 35.9699; less 6.00 of glass, at 45.00 an hour: 29.9699 * 60/45 = 39.95 minutes.</summary>
    [Fact]
    public void The_pendant_would_have_to_be_made_in_39_95_minutes()
    {
        var design = Assert.Single(RiverDrop.Found().Designs);
        var enough = EnoughMinutes.Of(design, RiverDrop.Channel, 52)!;
        Assert.Equal((39.95m, 48.20m, 8m), (enough.Minutes, enough.Now, enough.Unhurried));
        // The best entry took 571/12 = 47.58.
        Assert.False(enough.WereReached(design));
    }

    [Theory]
    [InlineData("60.50", true)]
    [InlineData("59.80", false)]
    public void The_best_three_of_twelve_entries_must_have_been_quick_enough(string price, bool reached)
    {
        // 60.50 pays for (56.3005 * 0.7486395 - 6) * 60/45 = 48.19 minutes, 59.80 for 47.51. As they were, the three quickest took up to 49.17
        // (590 for 12); here all of them took 47.60.
        var design = Assert.Single(RiverDrop.Found().Designs);
        var quick = Assert.Single(RiverDrop.Found(bench: [.. RiverDrop.Bench.Select((entry, load) => load > 8 ? entry with { Minutes = 12 * 47.6m }
            : entry)]).Designs);
        var enough = EnoughMinutes.Of(design, RiverDrop.Channel, decimal.Parse(price, System.Globalization.CultureInfo.InvariantCulture))!;
        Assert.False(enough.WereReached(design));
        Assert.Equal(reached, enough.WereReached(quick));
    }

    [Fact]
    public void A_price_that_pays_for_no_time_has_no_minutes() =>
        Assert.Null(EnoughMinutes.Of(Assert.Single(RiverDrop.Found().Designs), RiverDrop.Channel, 15));

    [Fact]
    public void The_lines_of_the_pendant_alone_lead_to_the_same_word()
    {
        // Its own shelf: the pendant is its own median, so it is wanted as much as the others.
        var studio = RiverDrop.Found();
        var design = Assert.Single(studio.Designs);
        var offers = OfferedDesign.Of(design, [new(RiverDrop.Web, RiverDrop.Channel)], _ => [], _ => []);
        var demand = StudioDemand.Of(offers, RiverDrop.LastDay, 0.9m);
        var found = DesignDecision.Of(design, demand, Floor, demand.Scarcity(2000));
        Assert.Equal((90m, 52m, 60.51m), (found.Facts.Orders, found.Facts.Price, found.Facts.FloorPrice));
        Assert.Equal((36.90m, 37.72m), (decimal.Round(found.Facts.Earned!.Value.Low, 2), decimal.Round(found.Facts.Earned.Value.High, 2)));
        Assert.Equal(31m, decimal.Floor(found.Facts.PiecesToBeHad - NinetyDays(design)));
        Assert.Equal(DecisionWord.Redesign, found.Decision.Word);
        Assert.Equal(["#/findings/0", "#/take"], found.BecauseIn(design));
    }

    [Fact]
    public void Hours_that_are_freed_go_to_the_design_that_earns_most_and_is_sold_out()
    {
        Assert.Equal("c", DesignDecision.InItsPlace(
            [
                Of("a", s_pendant with { Earned = (90, 99), SoldOutShare = 0 }),
                Of("b", s_pendant with { Earned = (50, 60), SoldOutShare = 0.5m }),
                Of("c", s_pendant with { Earned = (70, 80), SoldOutShare = 0.3m }),
                Of("d", s_pendant with { Earned = (99, 99), SoldOutShare = 0.9m }),
            ],
            "d"));
        Assert.Null(DesignDecision.InItsPlace([Of("a", s_pendant)], "d"));
    }

    /// <summary>
    /// 1.4635 orders a week * 365/7 * 1.07306 hours = 81.9 hours of the pendant; with all nine designs the same piece, their present rates together.
    /// </summary>
    [Fact]
    public void All_orders_of_a_year_take_a_share_of_its_hours()
    {
        var rates = NineDesigns.Demand.Shelves[0].Designs.Sum(design => design.Rate!.Value.Value);
        Assert.Equal(rates * 365 / 7 * NineDesigns.Piece.BenchHours / 2000, NineDesigns.Demand.Scarcity(2000)!.Value, 12);
        Assert.Null(NineDesigns.Demand.Scarcity(0));
    }

    private static KeyValuePair<string, DesignDecision> Of(string sku, DecisionFacts facts) =>
        new(sku, new DesignDecision(facts, Decision.Of(facts)));

    private static decimal NinetyDays(DesignEvidence design) => design.AsFound.Value.PiecesPerYear * 90 / 365;

    private static decimal? Floor(UnitCost piece, Channel channel) =>
        ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(channel).Value).Found?.FloorPrice;

    private static DecisionWord Word(DecisionFacts facts) => Decision.Of(facts).Word;
}
