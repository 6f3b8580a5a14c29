using Xunit;

namespace PriceFloor.Pricing.Tests.Costing;

/// <summary>Work made for one order: whole loads, one setup, all of it sold. 30.00 an hour.</summary>
public sealed class RunTests
{
    private static readonly StudioYear s_year = StudioYear.Of(new CostProfile
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 60000, Per = Per.Year }],
        SoldShare = 0.5m,
    }, default).Value;

    private static readonly Design s_bowl = new()
    {
        Profile = "main",
        Making = new Making
        {
            Steps =
            [
                new Step { Name = "blow", HandsOnMinutes = 20, GoodShare = 0.8m },
                new Step { Name = "anneal", HandsOnMinutes = 12, BatchSize = 4, MayBeHurried = false },
                new Step { Name = "polish", HandsOnMinutes = 5, Rework = new Rework { Share = 0.1m, Minutes = 10 } },
            ],
            SetupMinutes = 15,
            RunSize = 3,
        },
        Materials =
        [
            new MaterialLine { Name = "glass", Amount = 2 },
            new MaterialLine { Name = "box", Amount = 1, At = "finish" },
        ],
        Seconds = new Seconds { Share = 0.5m, Price = 4 },
    };

    [Fact]
    public void A_run_pays_for_whole_loads_and_one_setup_and_sells_all_of_it()
    {
        // 5 bowls: 6.25 blown (125 min), 5 in two loads (24), 5 polished with half a piece worked over (25 + 5), setup 15: 194 min.
        var run = Of(s_bowl, new RunTerms(5));
        Assert.Equal((6.25m, 194m / 60, 2m), (run.Starts, run.BenchHours, run.Loads));
        Assert.Equal([125m, 24, 30], run.StepMinutes);
        Assert.Equal(6.25m * 2 + 5, run.Materials);
        Assert.Equal(0.5m * 4 * 1.25m, run.Seconds);
        Assert.Equal(8, run.StartsToBeSure); // P(5 of 7 at 80 %) = 0.852, of 8 0.944
    }

    [Fact]
    public void To_be_sure_more_are_started_and_paid_for()
    {
        // 8 started, 6.4 go on: 160 min, two loads, 6.4 * (5 + 1); 8 lots of glass, 6.4 boxes, three more than wanted.
        var run = Of(s_bowl, new RunTerms(5) { Sure = 0.9m });
        Assert.Equal((8m, (15 + 160 + 24 + 38.4m) / 60), (run.Starts, Rounding.Settle(run.BenchHours * 60) / 60));
        Assert.Equal((8 * 2 + 6.4m, 0.5m * 4 * 3), (Rounding.Settle(run.Materials), run.Seconds));
    }

    [Fact]
    public void A_physical_limit_sets_the_bench_up_more_than_once() =>
        Assert.Equal((194 + 15) / 60m, Of(s_bowl, new RunTerms(5) { Runs = 2 }).BenchHours);

    [Fact]
    public void Trial_pieces_pay_for_their_own_minutes_and_teach_nothing()
    {
        // Two trials: 2 * (20 + 5 + 1) = 52 min, glass and box for two: 6.00.
        var run = Of(s_bowl, new RunTerms(5) { TrialPieces = 2 });
        Assert.Equal((52m, (194 + 52) / 60m, 17.5m + 6), (run.TrialMinutes, run.BenchHours, run.Materials));
        var taught = Of(s_bowl, new RunTerms(5) { TrialPieces = 2, Learning = new Learning { Rate = 0.8m } });
        Assert.Equal(52m, taught.TrialMinutes); // at the first piece's minutes, and the run's first is still the first
        Assert.Equal(24m, taught.StepMinutes[1]); // what must not be hurried is not learned away
        Assert.True(taught.StepMinutes[0] < 125);
    }

    [Fact]
    public void A_load_of_material_is_paid_for_whole()
    {
        var year = StudioYear.Of(s_year.Profile with { Materials = [new StockMaterial { Material = "kwh", Price = 0.25m }] }, default).Value;
        var fired = s_bowl with { Materials = [new MaterialLine { Material = "kwh", Quantity = 16, BatchSize = 4, At = "anneal" }] };
        var piece = UnitCost.Of(fired, year).Value;
        Assert.Equal(8m, Run.Of(piece, new RunTerms(5)).Value.Materials); // 16 * 0.25 = 4.00 a load, two loads
        // A trial takes its part of a load: 1.00.
        Assert.Equal(9m, Run.Of(piece, new RunTerms(5) { TrialPieces = 1 }).Value.Materials);
        Assert.Equal(4m, Run.Of(piece, new RunTerms(5)).Value.Loads); // two of the step, two of the material
    }

    [Fact]
    public void One_off_work_of_the_design_is_shared_by_its_pieces()
    {
        var run = Of(s_bowl with { Development = new Development { Hours = 10, Cost = 40, Pieces = 50 } }, new RunTerms(5));
        Assert.Equal((194m / 60 + 1, 17.5m + 4), (run.BenchHours, run.Materials));
    }

    [Fact]
    public void Making_without_steps_is_one_step_a_start()
    {
        var plain = new Design { Profile = "main", Making = new Making { PiecesPerDay = 4, GoodShare = 0.5m } };
        Assert.Equal(3 * 2 * 120m, Assert.Single(Of(plain, new RunTerms(3)).StepMinutes)); // 8 h * 60 / 4 = 120 min a start
        // Two of the learning ones: 120 + 0.8 * 120.
        Assert.Equal(216m, Assert.Single(Of(plain, new RunTerms(1) { Learning = new Learning { Rate = 0.8m } }).StepMinutes));
        var bench = plain with { Making = new Making { PiecesPerBenchDay = 6 } };
        Assert.Equal(80m, Assert.Single(Of(bench, new RunTerms(1)).StepMinutes));
    }

    [Fact]
    public void A_run_past_counting_is_refused()
    {
        var hopeless = s_bowl with { Making = new Making { MinutesPerPiece = 1, GoodShare = 0.0001m } };
        Assert.Equal("too-large", Assert.Single(Run.Of(UnitCost.Of(hopeless, s_year).Value, new RunTerms(11)).Faults).Code);
        Assert.NotNull(Run.Of(UnitCost.Of(hopeless, s_year).Value, new RunTerms(10)).Found);
    }

    private static Run Of(Design design, RunTerms terms) => Run.Of(UnitCost.Of(design, s_year).Value, terms).Value;
}
