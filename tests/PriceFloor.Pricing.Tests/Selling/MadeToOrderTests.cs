using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

/// <summary>The worked example of the model: thirty goblets for one client.</summary>
public sealed class MadeToOrderTests
{
    private static readonly Design s_goblet = new()
    {
        Profile = "main",
        Making = new Making
        {
            Steps =
            [
                new Step { Name = "torch", HandsOnMinutes = 120 },
                new Step { Name = "anneal", HandsOnMinutes = 20, BatchSize = 12, GoodShare = 0.87m, MayBeHurried = false },
                new Step { Name = "finish the rim", HandsOnMinutes = 10 },
            ],
            SetupMinutes = 45,
            RunSize = 4,
        },
        Materials =
        [
            new MaterialLine { Name = "glass and gas", Amount = 9.50m },
            new MaterialLine { Material = "kiln-kwh", Quantity = 16, BatchSize = 12, At = "anneal" },
        ],
    };

    private static readonly Channel s_direct = new()
    {
        Sells = Sells.Retail,
        Currency = "USD",
        Fees = [new Fee { Rate = 0.029m, Fixed = 0.30m, Of = FeeBase.Paid, Maximum = 25 }],
        Shipping = new Shipping { Cost = 60 },
    };

    private static readonly ExtraWork s_extra = new() { Hours = [6, 2.5m], Bought = [new BoughtWork(180), new BoughtWork(84, 0.70m)] };

    private static readonly Learning s_learning = new() { Rate = 0.85m };

    [Fact]
    public void The_run_of_goblets_is_as_worked()
    {
        var run = Goblets(s_learning);
        // torch over 34.4828 starts, three loads, finishing over 30, setup; then two trials of 130 min.
        Assert.Equal([2288.291010m, 60, 170.906585m], run.StepMinutes.Select(minutes => Rounding.Nearest(minutes, 6)));
        Assert.Equal(34.4828m, Rounding.Nearest(run.Starts, 4));
        Assert.Equal(260m, run.TrialMinutes);
        Assert.Equal(2564.197595m + 260, Rounding.Nearest(run.BenchHours * 60, 6));
        Assert.Equal(357.2262m, Rounding.Nearest(run.Materials, 4)); // 327.5862 + 10.08 + 19.56
    }

    [Fact]
    public void The_quote_of_goblets_is_as_worked()
    {
        var order = Order(Goblets(s_learning));
        Assert.Equal((55.5700m, 238.80m), (Rounding.Nearest(order.Hours, 4), order.Bought));
        Assert.Equal(3707.319576m, Rounding.Nearest(order.Floor, 6));
        Assert.Equal(3792.32m, order.FloorTotal); // the card fee sits at its maximum: 3,707.3196 + 25 + 60
        Assert.Equal(126.42m, Rounding.Up(order.PerPiece, 2)); // 126.4107 is 126.42 up
        Assert.Equal(4740.40m, order.RushTotal(order.FloorTotal, 0.25m));
        Assert.Equal((656.03m, 656.0262m), (order.LeastDeposit, Rounding.Nearest(order.OutOfPocket, 4)));
        Assert.True(order.CarriesItsShare(3792.32m) && !order.CarriesItsShare(3792.31m));
    }

    [Fact]
    public void Without_learning_it_costs_so_much_more() =>
        Assert.Equal(1846.45m, Order(Goblets(null)).FloorTotal - Order(Goblets(s_learning)).FloorTotal);

    [Fact]
    public void At_its_floor_an_hour_earns_what_an_hour_must_recover()
    {
        var order = Order(Goblets(s_learning));
        Assert.Equal(WorkedStudio.Year.PerBenchHour, order.EarnedPerHour(order.FloorTotal), 3);
    }

    [Fact]
    public void Work_alone_is_an_order_without_pieces()
    {
        // A repair of two hours with one revision of half an hour: 2.5 * 55.988764 = 139.97, 60 for shipping, 2.9 % + 0.30 of what is paid.
        var repair = MadeToOrder.Of(WorkedStudio.Year, s_direct, [],
            new ExtraWork { Hours = [2], RevisionsIncluded = 1, RevisionHours = 0.5m }).Value;
        Assert.Equal((0, 2.5m), (repair.Pieces, repair.Hours));
        Assert.Equal(206.26m, repair.FloorTotal); // (139.971910 + 60 + 0.30) / 0.971 = 206.2533
        Assert.Equal("no-bench-time", Assert.Single(MadeToOrder.Of(WorkedStudio.Year, s_direct, [], ExtraWork.None).Faults).Code);
    }

    [Fact]
    public void Selling_time_packing_and_the_stall_are_those_of_all_its_pieces()
    {
        var channel = s_direct with
        {
            Selling = new SellingTime { MinutesPerOrder = 30, MinutesPerPiece = 2 },
            CostPerPiece = 0.5m,
            Stall = new Stall { Cost = 60, Pieces = 20, Hours = 4 },
        };
        var order = MadeToOrder.Of(WorkedStudio.Year, channel, [Goblets(s_learning)], s_extra).Value;
        Assert.Equal((30 + 60) / 60m + 30 * 4 / 20m, order.SellingHours);
        Assert.Equal(656.0262m + 30 * (0.5m + 3), Rounding.Nearest(order.OutOfPocket, 4));
    }

    [Fact]
    public void Two_currencies_never_meet() => Assert.Equal("currency-mismatch",
        Assert.Single(MadeToOrder.Of(WorkedStudio.Year, s_direct with { Currency = "EUR" }, [Goblets(null)], s_extra).Faults).Code);

    [Fact]
    public void Its_workings_can_be_redone()
    {
        var order = MadeToOrder.Of(WorkedStudio.Year, s_direct with { SalesTax = new SalesTax { Rate = 0.2m, Included = true } },
            [Goblets(s_learning), Run.Of(WorkedStudio.Piece("RB-014"), new RunTerms(7) { Sure = 0.95m }).Value], s_extra).Value;
        var known = Redone.From(Workings.Of(WorkedStudio.Year).Concat(Workings.Of(order)));
        Assert.Equal((order.Floor, order.OutOfPocket), (known["orderFloor"], known["outOfPocket"]));
        Assert.True(known["atFloorTotalOrderNet"] >= order.Floor && known["oneUnitLowerOrderNet"] < order.Floor);
    }

    private static Run Goblets(Learning? learning) => Run.Of(UnitCost.Of(s_goblet, WorkedStudio.Year).Value,
        new RunTerms(30) { Learning = learning, TrialPieces = 2 }).Value;

    private static MadeToOrder Order(Run run) => MadeToOrder.Of(WorkedStudio.Year, s_direct, [run], s_extra).Value;
}
