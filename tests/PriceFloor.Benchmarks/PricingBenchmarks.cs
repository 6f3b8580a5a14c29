using BenchmarkDotNet.Attributes;

namespace PriceFloor.Benchmarks;

/// <summary>What one question costs in the pricing library, with its allocations.</summary>
[MemoryDiagnoser]
public class PricingBenchmarks
{
    private readonly CostProfile _profile = new()
    {
        Currency = "USD",
        YearStart = new DateOnly(2027, 1, 1),
        Calendar = new StudioCalendar { WeeksPerYear = 48, DaysPerWeek = 5, HoursPerDay = 8, BenchShare = 0.65m },
        Expenses = [new Expense { Amount = 540, Per = Per.Month }, new Expense { Amount = 3900, Per = Per.Year, TracedTo = TracedTo.Piece }],
        Household = [new HouseholdLine { Amount = 1450, Per = Per.Month, BusinessShare = 0.12m }],
        Tax = new TaxRules
        {
            Kind = TaxKind.Levies,
            Levies =
            [
                new Levy { Share = 0.9235m, DeductibleShare = 0.5m, Bands = [new Band { UpTo = 176100, Rate = 0.153m }, new Band { Rate = 0.029m }] },
                new Levy
                {
                    Allowance = 15750,
                    Bands = [new Band { UpTo = 11925, Rate = 0.10m }, new Band { UpTo = 48475, Rate = 0.12m }, new Band { Rate = 0.22m }],
                },
            ],
        },
    };

    private readonly Design _design = new()
    {
        Profile = "main",
        Making = new Making { Steps = [.. Enumerable.Range(1, 10).Select(i => new Step { HandsOnMinutes = i, BatchSize = i, GoodShare = 0.99m })] },
        Materials = [new MaterialLine { Amount = 1.55m, At = "finish" }, new MaterialLine { Amount = 2.20m }],
    };

    private readonly Channel _channel = new()
    {
        Sells = Sells.Retail,
        Currency = "USD",
        Fees = [new Fee { Rate = 0.07m, Minimum = 0.18m, Maximum = 3 }, new Fee { Rate = 0.024m, Fixed = 0.25m, Of = FeeBase.Paid }],
        SalesTax = new SalesTax { Rate = 0.2m, Included = true },
    };

    private readonly Plan _plan = new()
    {
        Profile = "main",
        Lines = [.. Enumerable.Range(0, 500).Select(i =>
            new PlanLine { Sku = "piece", Channel = $"channel {i % 5}", Units = 3, Season = $"season {i % 4}" })],
        Seasons = Enumerable.Range(0, 4).ToDictionary(i => $"season {i}", i => (IReadOnlyList<decimal>)[4, 5, 6, 6, 8, 6, 5, 5, 7, 10, 19, 19 + i]),
        Terms = [new PlanTerms { Channel = "channel 1", DepositShare = 0.3m, DepositMonthsBefore = 1, PaidAfterMonths = 1 }],
    };

    private IReadOnlyList<PlannedLine> _lines = null!;
    private StudioYear _year = null!;
    private FloorPrice _floor = null!;
    private SellingTerms _terms = null!;
    private ChannelPrices _prices = null!;

    [GlobalSetup]
    public void Prepare()
    {
        _year = StudioYear.Of(_profile, default).Value;
        _floor = FloorPrice.Of(UnitCost.Of(_design, _year).Value, null).Value;
        _terms = SellingTerms.Of(_channel).Value;
        _prices = ChannelPrices.Of(_floor, _terms).Value;
        _lines = [.. _plan.Lines.Select(line => new PlannedLine(_prices.Check(58).Value, line.Units))];
    }

    [Benchmark]
    public object AYearWithLevies() => StudioYear.Of(_profile, default).Value;

    [Benchmark]
    public object ADesignWithTenSteps() => UnitCost.Of(_design, _year).Value;

    [Benchmark]
    public object AFloorOnAChannelWithClampedFees() => ChannelPrices.Of(_floor, _terms).Value;

    [Benchmark]
    public object ACheck() => _prices.Check(58).Value;

    [Benchmark]
    public object AYearOf500LinesByMonth() => YearByMonth.Of(_year, _plan, _lines).Value;

    [Benchmark]
    public Verdict AVerdict() => _prices.VerdictOf(58);
}
