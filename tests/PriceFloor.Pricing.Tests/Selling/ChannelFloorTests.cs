using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

/// <summary>What selling time, normal use, usual discounts and losses do to a floor. Every figure is worked by hand.</summary>
public sealed class ChannelFloorTests
{
    /// <summary>50 weeks of 5 days of 8 hours: 2,000 h. 60,000 to bring in.</summary>
    private static readonly CostProfile s_year = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8, BenchShare = 0.6m },
        Expenses = [new Expense { Amount = 60000, Per = Per.Year }],
    };

    /// <summary>Two hours a piece.</summary>
    private static readonly Design s_piece = new() { Profile = "main", Making = new Making { MinutesPerPiece = 120 } };

    private static readonly Channel s_plain = new() { Sells = Sells.Retail, Currency = "USD" };

    [Fact]
    public void With_a_quarter_of_the_hours_idle_each_hour_carries_a_third_more()
    {
        // 1,200 bench hours at 50.00; of 75 % of them, 900 h, 66.67.
        Assert.Equal((50m, 1200m), (YearOf(1, 0).PerBenchHour, YearOf(1, 0).CarryingHours));
        var idle = YearOf(0.75m, 0);
        Assert.Equal((900m, 66.67m), (idle.CarryingHours, Rounding.Up(idle.PerBenchHour, 2)));
        Assert.Equal(1200m, idle.BenchHours); // the hours are worked
        Assert.Equal(450m, PieceOf(idle).PiecesPerYear); // 900 / 2
    }

    [Fact]
    public void Selling_hours_carry_the_year_with_the_bench_hours_and_each_channel_pays_for_its_own()
    {
        // 0.6 at the bench and 0.2 selling: 1,600 h at 37.50. A piece of 2 h: 75.00; with 24 minutes of selling 75.00 + 15.00.
        var year = YearOf(1, 0.2m);
        Assert.Equal((1600m, 400m, 37.50m), (year.CarryingHours, year.SellingHours, year.PerBenchHour));
        var shop = new ChannelFloor(PieceOf(year),
            s_plain with { Selling = new SellingTime { MinutesPerOrder = 30, MinutesPerPiece = 4 }, PiecesPerOrder = 1.5m });
        Assert.Equal((0.4m, 2.4m, 90m), (shop.SellingHours, shop.Hours, shop.Floor)); // 30 / 1.5 + 4 = 24 min
        var wholesale = new ChannelFloor(PieceOf(year), s_plain);
        Assert.Equal((0m, 2m, 75m), (wholesale.SellingHours, wholesale.Hours, wholesale.Floor));
    }

    [Fact]
    public void A_stalls_hours_are_spread_over_the_pieces_that_it_sells()
    {
        // 10 h over 40 pieces are 15 minutes: 0.25 x 37.50 = 9.375 more.
        var fair = new ChannelFloor(PieceOf(YearOf(1, 0.2m)), s_plain with { Stall = new Stall { Cost = 200, Pieces = 40, Hours = 10 } });
        Assert.Equal((0.25m, 84.375m), (fair.SellingHours, fair.Floor));
    }

    [Fact]
    public void A_floor_price_reaches_the_floor_on_its_own_channel()
    {
        var prices = PricesOf(YearOf(1, 0.2m), s_plain with { Selling = new SellingTime { MinutesPerPiece = 24 } });
        Assert.Equal((90m, 150m), (prices.FloorPrice, prices.TargetPrice)); // twice the wholesale price of 75.00, which sells in no time
        Assert.Equal((Verdict.BelowFloor, Verdict.BelowTarget), (prices.VerdictOf(89.99m), prices.VerdictOf(90)));
        var check = prices.Check(100).Value;
        Assert.Equal((10m, 41.67m), (check.AboveFloor, Rounding.Nearest(check.EarnedPerBenchHour, 2))); // 100 / 2.4 h
    }

    [Fact]
    public void Take_home_at_a_price_counts_every_carrying_hour()
    {
        // 100 for 2.4 h are 41.6667 an hour; 1,600 h of it less 60,000 are 6,666.67 over 2,000 working hours: 3.33.
        var prices = PricesOf(YearOf(1, 0.2m), s_plain with { Selling = new SellingTime { MinutesPerPiece = 24 } });
        Assert.Equal(3.33m, Rounding.Nearest(TakeHome.Of(prices.Check(100).Value).Value.PerHour, 2));
    }

    [Fact]
    public void An_average_discount_is_taken_off_before_everything_that_is_a_share_of_the_price()
    {
        // 100 less 10 % are 90; the gallery keeps 40 % of that and leaves 54. The target still compares the listed 100.
        var sale = Sale.Of(100, s_plain with { UsualDiscount = 0.1m, ShopShare = 0.4m });
        Assert.Equal((100m, 90m, 54m, 90m), (sale.BeforeTax, sale.AfterDiscount, sale.Net, sale.Revenue));
        // A floor of 100: 100 / 0.9 = 111.1111, so 111.12.
        Assert.Equal(111.12m, PricesOf(YearOf(1, 0), s_plain with { UsualDiscount = 0.1m }).FloorPrice);
    }

    [Fact]
    public void The_target_compares_what_is_listed_not_what_is_paid_after_the_discount() =>
        Assert.Equal(200m, PricesOf(YearOf(1, 0), s_plain with { UsualDiscount = 0.4m }).TargetPrice); // twice 100.00

    [Fact]
    public void A_piece_that_is_lost_at_the_gallery_brings_nothing_and_cost_its_packing()
    {
        // 100, packing 2: 98 stay; of ten pieces one is lost: 0.9 x 98 - 0.1 x 2 = 88. Buyers pay for nine of ten: 90.
        var sale = Sale.Of(100, s_plain with { LossShare = 0.1m, CostPerPiece = 2 });
        Assert.Equal((98m, 88m, 90m), (sale.BeforeLosses, sale.Net, sale.Revenue));
    }

    [Fact]
    public void Work_that_is_done_once_is_spread_over_the_pieces_expected_of_the_design()
    {
        // 10 h and 200.00 over 50 pieces: 0.2 h and 4.00 more. 2.2 h at 50.00 and 4.00: 114.00. None of it can be saved.
        var piece = UnitCost.Of(s_piece with { Development = new Development { Hours = 10, Cost = 200, Pieces = 50 } }, YearOf(1, 0)).Value;
        Assert.Equal((2.2m, 4m, 114m, 0.2m), (piece.BenchHours, piece.Materials, piece.Floor, piece.FixedHours));
        // Of ten pieces nine sell: the making is divided by 0.9, the one-off work is not.
        var few = UnitCost.Of(piece.Design with { SoldShare = 0.8m }, YearOf(1, 0)).Value;
        Assert.Equal((2.7m, 4m), (few.BenchHours, few.Materials)); // 2 / 0.8 + 0.2
    }

    [Fact]
    public void Pieces_that_are_worked_over_take_their_time_in_their_own_step()
    {
        // Two steps: 30 min, of which 20 % once more for 15; then 60 min for a batch of 4 of which none is lost: 30 + 3 + 15 = 48 min.
        var making = new Making
        {
            Steps =
            [
                new Step { Name = "torch", HandsOnMinutes = 30, Rework = new Rework { Share = 0.2m, Minutes = 15 } },
                new Step { Name = "cut", HandsOnMinutes = 60, BatchSize = 4, MayBeHurried = false },
            ],
        };
        var piece = UnitCost.Of(new Design { Profile = "main", Making = making }, YearOf(1, 0)).Value;
        Assert.Equal((0.8m, 0.05m, 0.25m), (piece.BenchHours, piece.ReworkHours, piece.FixedHours));
        // Half of what enters the second step is lost: 2 pieces enter the first for each good one, and twice 33 minutes.
        var lossy = making with { Steps = [making.Steps[0], making.Steps[1] with { GoodShare = 0.5m }] };
        Assert.Equal(1.6m, UnitCost.Of(new Design { Profile = "main", Making = lossy }, YearOf(1, 0)).Value.BenchHours);
    }

    [Fact]
    public void Too_few_carrying_hours_and_more_shares_than_a_day_has_are_refused()
    {
        var day = s_year.Calendar with { BenchShare = 0.6m, SellingShare = 0.41m };
        Assert.Equal("/calendar/sellingShare out-of-range",
            Assert.Single(ProfileRules.Faults(s_year with { Calendar = day }).Select(fault => $"{fault.Pointer} {fault.Code}")));
        Assert.Empty(ProfileRules.Faults(s_year with { Calendar = day with { SellingShare = 0.4m } }));
        var hardly = s_year with { Calendar = s_year.Calendar with { WeeksPerYear = 0.01m, NormalUse = 0.01m } }; // 0.24 h x 0.01
        Assert.Equal("/calendar/normalUse no-bench-time",
            Assert.Single(StudioYear.Of(hardly, default).Faults.Select(fault => $"{fault.Pointer} {fault.Code}")));
    }

    private static StudioYear YearOf(decimal normalUse, decimal sellingShare) => StudioYear.Of(
        s_year with { Calendar = s_year.Calendar with { NormalUse = normalUse, SellingShare = sellingShare } }, default).Value;

    private static UnitCost PieceOf(StudioYear year) => UnitCost.Of(s_piece, year).Value;

    private static ChannelPrices PricesOf(StudioYear year, Channel channel) =>
        ChannelPrices.Of(FloorPrice.Of(PieceOf(year), null).Value, SellingTerms.Of(channel).Value).Value;
}
