using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using Xunit;

namespace PriceFloor.Pricing.Tests.Planning;

public sealed class RemediesTests
{
    /// <summary>Each figure, fed back, lets the price carry its part; one unit less of its last decimal does not.</summary>
    [Property(MaxTest = 400, EndSize = 1_000_000)]
    public void A_remedy_fed_back_mends_the_check_and_a_hair_less_does_not(NonNegativeInt seed, PositiveInt part)
    {
        var check = Draw(seed, part);
        if (check is null)
            return;
        var (piece, net, channel) = (check.Prices.Floor.UnitCost, check.Sale.Net, check.Prices.Terms.Channel);
        var (year, sold) = (piece.Year, check.Prices.ChannelFloor.SellingHours);
        foreach (var remedy in Remedies.Of(check).Value.All.Where(remedy => remedy.Possible && remedy.After != remedy.Before))
        {
            if (remedy.InTheDesign.Count > 0)
                Assert.True(net.Reaches(FloorOn(Faster(piece, remedy.InTheDesign), check)), "The design's own figures are not enough");
            var after = remedy.After!.Value;
            switch (remedy.Kind)
            {
                case RemedyKind.RaiseThePrice:
                    Turns(after, -check.Prices.Terms.Grid.Step,
                        price => price <= 0 || check.Prices.Check(price).Value.CarriesItsShare || price < check.Prices.Terms.Grid.Step);
                    break;
                case RemedyKind.WorkFaster or RemedyKind.NewDesignMinutes:
                    Turns(after, 0.01m, minutes =>
                        net.Reaches(year.PerBenchHour * (minutes / 60 + sold) + piece.Materials - piece.SecondsCredit));
                    break;
                case RemedyKind.SpendLess:
                    Assert.Equal(remedy.Before!.Value - remedy.Cut!.Value, after);
                    Turns(remedy.Cut.Value, -0.01m,
                        cut => net.Reaches(
                            (year.BenchMustEarn - cut) / year.CarryingHours * (piece.BenchHours + sold) + piece.Materials - piece.SecondsCredit));
                    break;
                case RemedyKind.CheaperMaterials or RemedyKind.NewDesignMaterials:
                    Turns(after, 0.01m, materials => net.Reaches(FloorOn(piece, check) - piece.Materials + materials));
                    break;
                case RemedyKind.LoseFewer:
                    Turns(after, -0.000001m, share => net.Reaches(FloorOn(WithGoodShare(piece, share), check)));
                    break;
                case RemedyKind.EarnTaxableElsewhere:
                    Turns(after, -0.01m,
                        income =>
                            net.Reaches(FloorOn(With(piece, new OtherIncome { Amount = income, Per = Per.Year, Kind = IncomeKind.Taxable }), check)));
                    break;
                case RemedyKind.EarnNetElsewhere:
                    Turns(after, -0.01m,
                        income =>
                            net.Reaches(FloorOn(With(piece, new OtherIncome { Amount = income, Per = Per.Year, Kind = IncomeKind.Net }), check)));
                    break;
                case RemedyKind.MoreHours:
                    var calendar = year.Profile.Calendar;
                    Turns(after, -0.01m, week => net.Reaches(
                        YearOf(year, week / calendar.DaysPerWeek).PerBenchHour * (piece.BenchHours + sold) + piece.Materials - piece.SecondsCredit));
                    Assert.Equal(after > 48, remedy.Flag == RemedyReasons.LongWeek);
                    break;
                case RemedyKind.ChargeMoreShipping:
                    Turns(after, -0.01m, charged => Holds(channel with { Shipping = channel.Shipping with { Charged = charged } }));
                    break;
                case RemedyKind.MorePiecesAnOrder:
                    Turns(after, -1, pieces => pieces > channel.PiecesPerOrder && Holds(channel with { PiecesPerOrder = pieces }));
                    break;
                case RemedyKind.LowerShopShare:
                    Turns(after, 0.000001m, share => Holds(channel with { ShopShare = share }));
                    break;
                case RemedyKind.FullerStall:
                    Turns(after, -1,
                        pieces => pieces > channel.Stall!.Pieces && Holds(channel with { Stall = channel.Stall with { Pieces = pieces } }));
                    break;
                case RemedyKind.LessDiscount:
                    Turns(after, 0.000001m, share => Holds(channel with { UsualDiscount = share }));
                    break;
                default:
                    Assert.Fail($"{remedy.Kind} is not fed back");
                    break;
            }

            bool Holds(Channel changed) => Sale.Of(check.Sale.Price, changed).Net.Reaches(new ChannelFloor(piece, changed).Floor);

            void Turns(decimal enough, decimal hair, Func<decimal, bool> carries)
            {
                Assert.True(carries(enough), $"{remedy.Kind} {enough} is not enough");
                if (enough + hair > 0 && remedy.After != remedy.Before && enough < 1 - (remedy.Kind == RemedyKind.LoseFewer ? 0 : -1_000_000_000))
                    Assert.False(carries(enough + hair) && remedy.Kind != RemedyKind.RaiseThePrice,
                        $"{remedy.Kind} {enough + hair} would do already");
            }
        }
    }

    [Property(MaxTest = 400, EndSize = 1_000_000)]
    public void The_balanced_proposal_carries_its_share_whenever_there_is_one(NonNegativeInt seed, PositiveInt part)
    {
        if (Draw(seed, part) is { } check && Remedies.Of(check).Value.Balanced is { } balanced)
            Assert.True(balanced.CarriesItsShare);
    }

    [Fact]
    public void Time_that_must_not_be_hurried_is_never_offered()
    {
        // 60 min of which 30 are annealing, at 24.00 an hour; the price pays 16.00, that is 40 min: 30 fixed and 10 to hurry.
        var check = Check(16, new Step { HandsOnMinutes = 30 }, new Step { HandsOnMinutes = 30, MayBeHurried = false });
        Assert.Equal((60m, 40m), (Of(check, RemedyKind.WorkFaster).Before, Of(check, RemedyKind.WorkFaster).After));
        Assert.Equal("fixed-time",
            Of(Check(12, new Step { HandsOnMinutes = 30 }, new Step { HandsOnMinutes = 30, MayBeHurried = false }), RemedyKind.WorkFaster).Reason);
        Assert.Equal("step 1 in 10 minutes instead of 30: 40 bench minutes a sold piece instead of 60", Of(check, RemedyKind.WorkFaster).InWords);
    }

    [Fact]
    public void A_better_share_is_said_of_the_step_that_loses_most()
    {
        // Two steps of 24 min at 24.00 an hour are 9.60 each: 9.60 / 0.8 + 9.60 = 21.60 with the second keeping all. At 20.16 the first
        // may cost 10.56: 9.60 / 10.56 = 0.909091.
        var check = Check(20.16m, new Step { Name = "torch", HandsOnMinutes = 24, GoodShare = 0.8m }, new Step { HandsOnMinutes = 24 });
        Assert.Equal("91 of 100 must come out good in the step \"torch\" instead of 80", Of(check, RemedyKind.LoseFewer).InWords);
        Assert.Equal("91 of 100 must come out good in step 1 instead of 80",
            Of(Check(20.16m, new Step { HandsOnMinutes = 24, GoodShare = 0.8m }, new Step { HandsOnMinutes = 24 }), RemedyKind.LoseFewer).InWords);
        // A brace in a name is only a name.
        Assert.EndsWith("in the step \"{0} {x\" instead of 80", Of(Check(20.16m, new Step { Name = "{0} {x", HandsOnMinutes = 24, GoodShare = 0.8m },
            new Step { HandsOnMinutes = 24 }), RemedyKind.LoseFewer).InWords, StringComparison.Ordinal);
    }

    [Fact]
    public void The_words_are_in_the_makers_terms()
    {
        // 52 min at 24.00 an hour cost 20.80; at 16.40 there is time for 41 min; 40 h a week would have to be 40 x
        // 20.80 / 16.40 = 50.7317, up to 50.74.
        var check = Check(16.40m, new Step { HandsOnMinutes = 52 });
        Assert.Equal("step 1 in 41 minutes instead of 52: 41 bench minutes a sold piece instead of 52", Of(check, RemedyKind.WorkFaster).InWords);
        Assert.Equal("a price of 20.80 USD instead of 16.40 USD", Of(check, RemedyKind.RaiseThePrice).InWords);
        Assert.Equal("It would take 50.74 hours a week: more than 48 are no answer, choose another way.", Of(check, RemedyKind.MoreHours).InWords);
        // At 18.91 they would have to be 40 x 20.80 / 18.91 = 43.998, up to 44.
        Assert.Equal("44 working hours a week instead of 40, with the same weeks",
            Of(Check(18.91m, new Step { HandsOnMinutes = 52 }), RemedyKind.MoreHours).InWords);
    }

    [Fact]
    public void Every_way_says_what_its_figures_count()
    {
        RemedyMeasure[] measures =
        [
            RemedyMeasure.Price, RemedyMeasure.BenchMinutesAPiece, RemedyMeasure.MoneyAYear, RemedyMeasure.MoneyAPiece, RemedyMeasure.GoodShare,
            RemedyMeasure.MoneyAYear, RemedyMeasure.MoneyAYear, RemedyMeasure.BenchMinutesAPiece, RemedyMeasure.MoneyAPiece, RemedyMeasure.HoursAWeek,
            RemedyMeasure.MoneyAnOrder, RemedyMeasure.PiecesAnOrder, RemedyMeasure.ShopShare, RemedyMeasure.PiecesAStall,
            RemedyMeasure.UsualDiscount, RemedyMeasure.Channels,
        ];
        Assert.Equal(measures, Remedies.Of(Check(16, new Step { HandsOnMinutes = 60 })).Value.All.OrderBy(remedy => remedy.Kind)
            .Select(remedy => remedy.Measure));
    }

    [Fact]
    public void A_price_at_its_floor_needs_no_change()
    {
        var remedies = Remedies.Of(Check(24, new Step { HandsOnMinutes = 60, GoodShare = 1 })).Value;
        Assert.All(remedies.All.Where(remedy => remedy.Possible && remedy.Kind is not (RemedyKind.NewDesignMinutes or RemedyKind.NewDesignMaterials)),
            remedy => Assert.Equal(remedy.Before, remedy.After));
        Assert.All(
            remedies.All.Where(remedy => remedy.Kind is RemedyKind.SpendLess or RemedyKind.EarnTaxableElsewhere or RemedyKind.EarnNetElsewhere),
            remedy => Assert.StartsWith("Nothing needs to change", remedy.InWords, StringComparison.Ordinal));
        Assert.Equal(0m, remedies.All.Single(remedy => remedy.Kind == RemedyKind.SpendLess).Cut);
        Assert.Equal((null, null, null, true),
            (remedies.Balanced!.BenchMinutes, remedies.Balanced.Materials, remedies.Balanced.Cut, remedies.Balanced.CarriesItsShare));
    }

    [Fact]
    public void The_gap_is_shared_by_what_is_possible()
    {
        // Floor 24.00, price 18.00, no materials: half of the gap of 6.00 by 7.5 min faster; the rest 3.00 x 2,000 h / 0.875 h = 6,857.15.
        var balanced = Remedies.Of(Check(18, new Step { HandsOnMinutes = 60 })).Value.Balanced!;
        Assert.Equal((52.5m, null, 6857.15m, true), (balanced.BenchMinutes, balanced.Materials, balanced.Cut, balanced.CarriesItsShare));
    }

    private static Remedy Of(PriceCheck check, RemedyKind kind) => Remedies.Of(check).Value.All.Single(remedy => remedy.Kind == kind);

    /// <summary>24.00 for each of 2,000 bench hours, sold where nothing is taken.</summary>
    private static PriceCheck Check(decimal price, params Step[] steps)
    {
        var year = StudioYear.Of(new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
            Expenses = [new Expense { Amount = 48000, Per = Per.Year }],
        }, default).Value;
        var piece = UnitCost.Of(new Design { Profile = "main", Making = new Making { Steps = steps } }, year).Value;
        return ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(new Channel { Sells = Sells.Wholesale, Currency = "USD" }).Value)
            .Value.Check(price).Value;
    }

    /// <summary>A random studio with a price somewhat below its floor; null where the floor is too near to nothing.</summary>
    private static PriceCheck? Draw(NonNegativeInt seed, PositiveInt part)
    {
        var studio = new RandomStudio(seed.Get);
        var piece = UnitCost.Of(studio.Design(), StudioYear.Of(studio.Profile(), default).Value).Value;
        var prices = ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(studio.Channel()).Value).Value;
        var price = decimal.Round(prices.FloorPrice * (1 - part.Get % 60 / 100m), 2);
        return piece.Floor < 1 || price <= 0 ? null : prices.Check(price).Value;
    }

    private static UnitCost WithGoodShare(UnitCost piece, decimal share)
    {
        var making = piece.Design.Making;
        var worst = making.Steps?.Index().MinBy(step => step.Item.GoodShare).Index;
        var better = making.Steps is { } steps
            ? making with { Steps = [.. steps.Select((step, i) => i == worst ? step with { GoodShare = share } : step)] }
            : making with { GoodShare = share };
        return UnitCost.Of(piece.Design with { Making = better }, piece.Year).Value;
    }

    /// <summary>The same year with longer days: its pay per hour, where there is one, grows with them.</summary>
    private static StudioYear YearOf(StudioYear year, decimal hoursPerDay) =>
        StudioYear.Of(year.Profile with { Calendar = year.Profile.Calendar with { HoursPerDay = hoursPerDay } }, default).Value;

    private static UnitCost With(UnitCost piece, OtherIncome income) => UnitCost.Of(piece.Design,
        StudioYear.Of(piece.Year.Profile with { OtherIncome = [.. piece.Year.Profile.OtherIncome, income] }, default).Value).Value;

    private static decimal FloorOn(UnitCost piece, PriceCheck check) => new ChannelFloor(piece, check.Prices.Terms.Channel).Floor;

    /// <summary>The same design with the figures that a remedy gives.</summary>
    private static UnitCost Faster(UnitCost piece, IReadOnlyList<DesignFigure> figures)
    {
        var making = piece.Design.Making;
        foreach (var figure in figures)
        {
            var at = figure.At.Split('/');
            making = (at[2], at[^1]) switch
            {
                ("steps", "handsOnMinutes") => WithStep(making, at[3], step => step with { HandsOnMinutes = figure.After }),
                ("steps", _) => WithStep(making, at[3], step => step with { Rework = step.Rework! with { Minutes = figure.After } }),
                ("minutesPerPiece", _) => making with { MinutesPerPiece = figure.After },
                ("piecesPerDay", _) => making with { PiecesPerDay = figure.After },
                ("piecesPerBenchDay", _) => making with { PiecesPerBenchDay = figure.After },
                _ => making with { SetupMinutes = figure.After },
            };
        }

        return UnitCost.Of(piece.Design with { Making = making }, piece.Year).Value;
    }

    private static Making WithStep(Making making, string index, Func<Step, Step> changed) => making with
    {
        Steps =
            [.. making.Steps!.Select((step, i) => i == int.Parse(index, System.Globalization.CultureInfo.InvariantCulture) ? changed(step) : step)],
    };
}
