using System.Numerics;
using Xunit;

namespace PriceFloor.Pricing.Tests.Costing;

public sealed class BenchTimeTests
{
    [Fact]
    public void A_long_chain_of_good_shares_keeps_its_digits()
    {
        // 93 steps of which each loses half: 2^93 pieces enter the first, 2 the last.
        var time = BenchTime.Of(new Making { Steps = [.. Enumerable.Repeat(new Step { HandsOnMinutes = 1, GoodShare = 0.5m }, 93)] },
            new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 });
        Assert.Equal((decimal)BigInteger.Pow(2, 93), time.Starts);
        Assert.Equal(2m, time.Entering[^1]);
        // 20 steps at 0.3: 1 / 0.3^20 = 10^20 / 3^20 = 28,679,719,907.924407..., to more than 20 digits.
        var thirds = BenchTime.Of(new Making { Steps = [.. Enumerable.Repeat(new Step { HandsOnMinutes = 1, GoodShare = 0.3m }, 20)] },
            new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 });
        var exact = (decimal)(BigInteger.Pow(10, 30) / BigInteger.Pow(3, 20)) / 10_000_000_000m;
        Assert.InRange(thirds.Starts / exact, 1 - 0.00000000000000000001m, 1 + 0.00000000000000000001m);
    }

    [Fact]
    public void A_chain_that_loses_nearly_everything_is_too_large_to_be_exact()
    {
        var year = StudioYear.Of(
            new CostProfile { Currency = "USD", Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 } },
            default).Value;
        foreach (var steps in new[] { 8, 100 }) // 10^32 starts
            Assert.Equal("too-large", UnitCost.Of(new Design
            {
                Profile = "main",
                Making = new Making { Steps = [.. Enumerable.Repeat(new Step { HandsOnMinutes = 1, GoodShare = 0.0001m }, steps)] },
            }, year).Faults[0].Code);
    }

    /// <summary>Half of each 8-hour day is spent at the bench.</summary>
    private static readonly StudioCalendar s_half = new() { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8, BenchShare = 0.5m };

    // Backwards: 1 / 1 leaves polish, 1 / 0.5 = 2 enter fire, 2 / 0.8 = 2.5 enter torch.
    private static readonly Making s_steps = new()
    {
        Steps =
        [
            new Step { Name = "torch", HandsOnMinutes = 30, GoodShare = 0.8m },
            new Step { Name = "fire", HandsOnMinutes = 24, BatchSize = 6, GoodShare = 0.5m, MayBeHurried = false, Uses = "kiln" },
            new Step { Name = "polish", HandsOnMinutes = 6 },
        ],
        SetupMinutes = 12,
        RunSize = 5,
    };

    [Fact]
    public void Every_step_sees_the_pieces_that_later_steps_lose()
    {
        var time = BenchTime.Of(s_steps, s_half);
        Assert.Equal([2.5m, 2m, 1m], time.Entering);
        Assert.Equal(2.5m, time.Starts);
        // 2.5 x 30 + 2 x 24 / 6 + 1 x 6 + 2.5 x 12 / 5 = 75 + 8 + 6 + 6 = 95 min.
        Assert.Equal(Rounding.Settle(95m / 60), Rounding.Settle(time.Hours));
    }

    [Fact]
    public void A_point_of_the_making_has_the_pieces_that_reach_it()
    {
        var time = BenchTime.Of(s_steps, s_half);
        Assert.Equal((2.5m, 2.5m, 2m, 1m, 1m),
            (time.PiecesAt("start"), time.PiecesAt("torch"), time.PiecesAt("fire"), time.PiecesAt("polish"), time.PiecesAt("finish")));
        Assert.Null(time.PiecesAt("engrave"));
        Assert.Null(time.PiecesAt("Torch")); // case counts
    }

    [Fact]
    public void A_step_called_finish_does_not_move_the_finish()
    {
        var making = new Making { Steps = [new Step { Name = "finish", HandsOnMinutes = 10, GoodShare = 0.25m }, new Step { HandsOnMinutes = 1 }] };
        Assert.Equal((4m, 1m), (BenchTime.Of(making, s_half).PiecesAt("start"), BenchTime.Of(making, s_half).PiecesAt("finish")));
    }

    [Fact]
    public void A_day_of_four_counts_only_its_bench_hours_and_a_bench_day_of_four_all_of_them()
    {
        Assert.Equal(1m, BenchTime.Of(new Making { PiecesPerDay = 4 }, s_half).Hours); // 8 h x 0.5 / 4
        Assert.Equal(2m, BenchTime.Of(new Making { PiecesPerBenchDay = 4 }, s_half).Hours); // 8 h / 4
        Assert.Equal(2.5m, BenchTime.Of(new Making { PiecesPerBenchDay = 4, GoodShare = 0.8m }, s_half).Hours); // 2 h / 0.8
    }

    [Fact]
    public void Setting_up_is_added_to_every_simple_making()
    {
        // 60 min for a run of 10: 0.1 h a start.
        Assert.Equal(1.1m, BenchTime.Of(new Making { PiecesPerDay = 4, SetupMinutes = 60, RunSize = 10 }, s_half).Hours);
        Assert.Equal(2.1m, BenchTime.Of(new Making { PiecesPerBenchDay = 4, SetupMinutes = 60, RunSize = 10 }, s_half).Hours);
        Assert.Equal(0.6m, BenchTime.Of(new Making { MinutesPerPiece = 30, SetupMinutes = 60, RunSize = 10 }, s_half).Hours);
    }

    [Fact]
    public void A_full_kiln_shares_its_minutes_and_a_half_full_one_does_not()
    {
        static decimal Minutes(decimal batch) =>
            BenchTime.Of(new Making { Steps = [new Step { HandsOnMinutes = 24, BatchSize = batch }] }, s_half).Hours * 60;
        Assert.Equal((24m, 2m, 1m), (Minutes(1), Rounding.Settle(Minutes(12)), Rounding.Settle(Minutes(24))));
    }

    [Fact]
    public void What_a_start_has_taken_by_its_first_loss_is_known()
    {
        // Cut loses nothing, so nothing is lost before fire: a start has 10 + 20 min and 30 / 6 = 5 min of setting up: 35 min.
        var making = new Making
        {
            Steps = [new Step { Name = "cut", HandsOnMinutes = 10 }, new Step { Name = "fire", HandsOnMinutes = 20, GoodShare = 0.5m },
                new Step { Name = "polish", HandsOnMinutes = 30, GoodShare = 0.9m }],
            SetupMinutes = 30,
            RunSize = 6,
        };
        var time = BenchTime.Of(making, s_half);
        Assert.Equal(Rounding.Settle(35m / 60), Rounding.Settle(time.HoursUntilFirstLoss));
        Assert.True(time.IsUsedBeforeFirstLoss("start") && time.IsUsedBeforeFirstLoss("cut") && time.IsUsedBeforeFirstLoss("fire"));
        Assert.False(time.IsUsedBeforeFirstLoss("polish") || time.IsUsedBeforeFirstLoss("finish"));
    }
}
