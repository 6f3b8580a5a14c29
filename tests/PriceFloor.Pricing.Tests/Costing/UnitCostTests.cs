using Xunit;

namespace PriceFloor.Pricing.Tests.Costing;

public sealed class UnitCostTests
{
    /// <summary>48,000 to recover over 250 days of 8 hours: 24.00 for each of 2,000 bench hours.</summary>
    private static readonly CostProfile s_profile = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 48000, Per = Per.Year }],
        Materials = [new StockMaterial { Material = "rod", Price = 40 }],
    };

    [Fact]
    public void A_lost_piece_is_paid_for_by_the_pieces_that_sell()
    {
        // 96 min at 24.00/h = 38.40 a batch of 12; 10 of 12 survive: 3.84 each.
        var piece = Of(new Making { Steps = [new Step { HandsOnMinutes = 96, BatchSize = 12, GoodShare = 10m / 12 }] });
        Assert.Equal((3.84m, 1.2m), (Rounding.Settle(piece.Floor), Rounding.Settle(piece.Time.Starts)));
    }

    [Fact]
    public void A_loss_late_in_the_making_costs_all_the_steps_before_it()
    {
        // 60 min, then 30 min of which half are lost: 2 x 60 + 2 x 30 = 180 min.
        Assert.Equal(3m,
            Of(new Making { Steps = [new Step { HandsOnMinutes = 60 }, new Step { HandsOnMinutes = 30, GoodShare = 0.5m }] }).BenchHours);
        // Lost in the first step: 2 x 60 + 30 = 150 min.
        Assert.Equal(2.5m,
            Of(new Making { Steps = [new Step { HandsOnMinutes = 60, GoodShare = 0.5m }, new Step { HandsOnMinutes = 30 }] }).BenchHours);
    }

    [Fact]
    public void The_four_ways_of_telling_bench_time()
    {
        Assert.Equal(2m, Of(new Making { PiecesPerDay = 4 }).BenchHours); // a bench share of 1: all 8 hours
        Assert.Equal(2m, Of(new Making { PiecesPerBenchDay = 4 }).BenchHours);
        Assert.Equal(0.75m, Of(new Making { MinutesPerPiece = 45 }).BenchHours);
        Assert.Equal(1m, Of(new Making { MinutesPerPiece = 45, GoodShare = 0.75m }).BenchHours);

        var part = s_profile with { Calendar = s_profile.Calendar with { BenchShare = 0.5m } };
        Assert.Equal(1m, Of(new Making { PiecesPerDay = 4 }, part).BenchHours); // 4 hours at the bench a day
        Assert.Equal(2m, Of(new Making { PiecesPerBenchDay = 4 }, part).BenchHours); // two days a piece's worth
    }

    [Fact]
    public void Setting_up_is_shared_by_the_run_and_paid_for_lost_pieces_too()
    {
        // 30 min for 10 starts = 3 min a start; 1.25 starts: 1.25 x (40 + 3) = 53.75 min.
        Assert.Equal(53.75m / 60, Of(new Making { MinutesPerPiece = 40, GoodShare = 0.8m, SetupMinutes = 30, RunSize = 10 }).BenchHours);
    }

    [Fact]
    public void Materials_are_paid_for_every_piece_that_got_so_far()
    {
        var making = new Making
        {
            Steps = [new Step { Name = "torch", HandsOnMinutes = 60, GoodShare = 0.8m },
                new Step { Name = "fire", HandsOnMinutes = 6, GoodShare = 0.5m }],
        };
        decimal At(string point) => Of(making, materials: new MaterialLine { Amount = 1, At = point }).Materials;
        Assert.Equal((2.5m, 2.5m, 2m, 1m), (At("start"), At("torch"), At("fire"), At("finish"))); // 1 / 0.4; 1 / 0.5
    }

    [Fact]
    public void Waste_and_a_shared_batch()
    {
        // 0.06 kg at 40.00 with 25 % lost: 2.40 / 0.75 = 3.20; shared by 4: 0.80.
        Assert.Equal(3.20m,
            Of(new Making { PiecesPerDay = 4 }, materials: new MaterialLine { Material = "rod", Quantity = 0.06m, WasteShare = 0.25m }).Materials);
        Assert.Equal(0.80m, Of(new Making { PiecesPerDay = 4 },
            materials: new MaterialLine { Material = "rod", Quantity = 0.06m, WasteShare = 0.25m, BatchSize = 4 }).Materials);
    }

    [Fact]
    public void A_step_named_start_does_not_move_the_start()
    {
        var making = new Making
        {
            Steps = [new Step { Name = "cut", HandsOnMinutes = 10, GoodShare = 0.5m }, new Step { Name = "start", HandsOnMinutes = 10 }],
        };
        Assert.Equal(2m, Of(making, materials: new MaterialLine { Amount = 1, At = "start" }).Materials);
    }

    [Fact]
    public void Pieces_that_never_sell_are_paid_for_by_those_that_do()
    {
        var all = Of(new Making { MinutesPerPiece = 60, GoodShare = 0.8m }, materials: new MaterialLine { Amount = 2 },
            seconds: new Seconds { Share = 0.5m, Price = 4 });
        var most = Of(new Making { MinutesPerPiece = 60, GoodShare = 0.8m }, materials: new MaterialLine { Amount = 2 },
            seconds: new Seconds { Share = 0.5m, Price = 4 }, soldShare: 0.8m);
        // 1.25 h x 24 + 2.50 - 0.5 x 4 x 0.25 = 32.00; over 0.8: 40.00.
        Assert.Equal((32m, 40m, 0.5m, 0.625m), (all.Floor, most.Floor, all.SecondsCredit, most.SecondsCredit));
        Assert.Equal(40m, Of(new Making { MinutesPerPiece = 60, GoodShare = 0.8m }, s_profile with { SoldShare = 0.8m },
            new Seconds { Share = 0.5m, Price = 4 }, null, new MaterialLine { Amount = 2 }).Floor);
    }

    [Fact]
    public void A_floor_is_never_below_nothing() =>
        Assert.Equal(0m, Of(new Making { MinutesPerPiece = 1, GoodShare = 0.1m }, seconds: new Seconds { Share = 1, Price = 50 }).Floor);

    [Fact]
    public void Seconds_that_pay_more_than_they_cost_are_noticed()
    {
        // A start is 60 min = 24.00 and 2.00 of material; half of the rejects at 52.00 bring just 26.00 each, at 52.02 more.
        Assert.False(Of(new Making { MinutesPerPiece = 60, GoodShare = 0.8m }, materials: new MaterialLine { Amount = 2 },
            seconds: new Seconds { Share = 0.5m, Price = 52 }).SecondsPayMoreThanTheyCost);
        Assert.True(Of(new Making { MinutesPerPiece = 60, GoodShare = 0.8m }, materials: new MaterialLine { Amount = 2 },
            seconds: new Seconds { Share = 0.5m, Price = 52.02m }).SecondsPayMoreThanTheyCost);
        // Lost in the first, cheap step: 10 min = 4.00.
        Assert.True(Of(new Making { Steps = [new Step { HandsOnMinutes = 10, GoodShare = 0.5m }, new Step { HandsOnMinutes = 600 }] },
            seconds: new Seconds { Share = 1, Price = 4.01m }).SecondsPayMoreThanTheyCost);
    }

    [Fact]
    public void What_cannot_be_made_is_refused_with_its_place()
    {
        var year = StudioYear.Of(s_profile, default).Value;
        var faults = UnitCost.Of(new Design
        {
            Profile = "main",
            Making = new Making { MinutesPerPiece = 0 },
            Materials = [new MaterialLine { Material = "frit", Quantity = 1 }, new MaterialLine { Amount = 1, At = "polish" }],
        }, year).Faults;
        Assert.Equal([("/materials/0/material", "unknown-material"), ("/materials/1/at", "unknown-step"), ("/making", "no-bench-time")],
            faults.Select(fault => (fault.Pointer, fault.Code.Word)));
    }

    [Theory]
    [InlineData(3, "80.00", "160.00")]
    [InlineData(4, "60.00", "120.00")]
    [InlineData(7, "34.29", "68.58")]
    public void The_plain_rule_prices(int aDay, string wholesale, string retail) // common practice, no source
    {
        var piece = Of(new Making { PiecesPerDay = aDay }, s_profile with { Expenses = [new Expense { Amount = 60000, Per = Per.Year }] });
        var floor = FloorPrice.Of(piece, null).Value;
        Assert.Equal((wholesale, retail), (floor.Wholesale.ToString(System.Globalization.CultureInfo.InvariantCulture),
            floor.Retail.ToString(System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void Shops_double_what_they_really_pay()
    {
        var piece = Of(new Making { MinutesPerPiece = 60 }); // 24.00
        Assert.Equal((48m, 48m, 60m),
            (FloorPrice.Of(piece, null).Value.Target, FloorPrice.Of(piece, 20).Value.Target, FloorPrice.Of(piece, 30).Value.Target));
    }

    private static UnitCost Of(Making making, CostProfile? profile = null, Seconds? seconds = null, decimal? soldShare = null,
        params MaterialLine[] materials) =>
            UnitCost.Of(new Design { Profile = "main", Making = making, Seconds = seconds, SoldShare = soldShare, Materials = materials },
                StudioYear.Of(profile ?? s_profile, default).Value).Value;

    private static UnitCost Of(Making making, MaterialLine materials, Seconds? seconds = null, decimal? soldShare = null) =>
        Of(making, null, seconds, soldShare, materials);
}
