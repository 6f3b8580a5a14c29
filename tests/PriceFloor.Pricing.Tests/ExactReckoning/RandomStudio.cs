namespace PriceFloor.Pricing.Tests.ExactReckoning;

/// <summary>Valid documents of every kind, drawn from a seed.</summary>
public sealed class RandomStudio(int seed)
{
    private static readonly string[] s_machines = ["kiln", "saw", "lathe"];
    private readonly Random _random = new(seed);

    public CostProfile Profile()
    {
        var profile = Bare();
        var calendar = profile.Calendar;
        return profile with
        {
            Calendar = calendar with
            {
                SellingShare = Rarely ? Between(0, 1 - calendar.BenchShare, 2) : 0,
                NormalUse = Rarely ? Between(0.5m, 1, 2) : 1,
            },
            Limits = [new ResourceLimit { Name = "kiln", LoadsPerYear = Between(0, 400, 0) }, new ResourceLimit { Name = "saw", LoadsPerYear = 900 }],
        };
    }

    private CostProfile Bare() => new()
    {
        Currency = "USD",
        YearStart = new DateOnly(2024 + _random.Next(5), 1 + _random.Next(12), 1),
        Calendar = new StudioCalendar
        {
            WeeksPerYear = Between(40, 52, 1),
            DaysPerWeek = Between(3, 6, 1),
            HoursPerDay = Between(4, 10, 2),
            BenchShare = Often(Between(0.2m, 1, 2), 1),
        },
        Expenses = Some(8, () => new Expense
        {
            Amount = Between(0, 900, 2),
            Per = Any<Per>(),
            Times = 8,
            Deductible = !Rarely,
            TracedTo = Rarely ? Any<TracedTo>() : null,
        }),
        Household = Some(4,
            () => new HouseholdLine { Amount = Between(0, 900, 2), Per = Any<Per>(), Times = 3, BusinessShare = Often(Between(0, 0.5m, 2), 0) }),
        OtherIncome = Some(2, () =>
            new OtherIncome { Amount = Between(0, 100, 2), Per = Any<Per>(), Times = 5, Kind = Any<IncomeKind>(), DaysPerYear = _random.Next(20) }),
        Helpers = Some(2, () => new Helper { BenchHoursPerYear = Between(0, 300, 1) }),
        Equipment = Some(3, () => new Equipment
        {
            Cost = Between(1000, 4000, 2),
            Salvage = Between(0, 1000, 2),
            InService = Rarely ? null : new DateOnly(2018 + _random.Next(12), 1 + _random.Next(12), 1 + _random.Next(28)),
            Depreciation = Wear(),
        }),
        Tax = Tax(),
        Pay = Rarely ? new Pay { Amount = Between(5, 25, 2), Per = Any<PayPer>() } : null,
        SoldShare = Often(Between(0.5m, 1, 2), 1),
        Materials = [new StockMaterial { Material = "rod", Price = Between(1, 60, 2) },
            new StockMaterial { Material = "kwh", Price = Between(0.1m, 0.5m, 4) }],
        PriceRule = new PriceRule { RetailMultiple = Often(Between(1, 3, 2), 2) },
    };

    public Design Design()
    {
        var steps = Some(4, () => new Step
        {
            HandsOnMinutes = Between(1, 60, 1),
            BatchSize = 1 + _random.Next(20),
            GoodShare = Often(Between(0.5m, 1, 2), 1),
            Uses = Rarely ? s_machines[_random.Next(3)] : null,
            Rework = Rarely ? new Rework { Share = Between(0, 1, 2), Minutes = Between(0, 20, 1) } : null,
        }).Select((step, i) => step with { Name = $"step {i}" }).ToList();
        var kind = _random.Next(steps.Count == 0 ? 3 : 4);
        string[] points = kind == 3 ? ["start", "finish", .. steps.Select(step => step.Name!)] : ["start", "finish"];
        return new Design
        {
            Profile = "main",
            Making = new Making
            {
                PiecesPerDay = kind == 0 ? Between(1, 20, 1) : null,
                PiecesPerBenchDay = kind == 1 ? Between(1, 20, 1) : null,
                MinutesPerPiece = kind == 2 ? Between(5, 200, 1) : null,
                Steps = kind == 3 ? steps : null,
                GoodShare = kind == 3 ? 1 : Often(Between(0.5m, 1, 2), 1),
                SetupMinutes = Between(0, 60, 0),
                RunSize = 1 + _random.Next(20),
            },
            Materials = Some(3, () => Rarely
                ? new MaterialLine { Amount = Between(0, 5, 2), At = points[_random.Next(points.Length)] }
                : new MaterialLine
                {
                    Material = Rarely ? "kwh" : "rod",
                    Quantity = Between(0, 2, 4),
                    WasteShare = Often(Between(0, 0.5m, 2), 0),
                    BatchSize = 1 + _random.Next(5),
                    At = points[_random.Next(points.Length)],
                }),
            Seconds = Rarely ? new Seconds { Share = Between(0, 1, 2), Price = Between(0, 20, 2) } : null,
            SoldShare = Rarely ? Between(0.5m, 1, 2) : null,
            Development = Rarely
                ? new Development { Hours = Between(0, 30, 1), Cost = Between(0, 400, 2), Pieces = 1 + _random.Next(300) }
                : null,
        };
    }

    public Channel Channel()
    {
        var step = Rarely ? new[] { 0.05m, 0.5m, 1m, 5m }[_random.Next(4)] : 0.01m;
        return new Channel
        {
            Sells = Rarely ? Sells.Wholesale : Sells.Retail,
            Currency = "USD",
            ShopShare = Often(Between(0, 0.5m, 2), 0),
            Fees = Some(3, () => new Fee
            {
                Rate = Between(0, 0.1m, 4),
                Fixed = Between(0, 1, 2),
                Of = Any<FeeBase>(),
                Minimum = Rarely ? Between(0, 2, 2) : null,
                Maximum = Rarely ? Between(2, 8, 2) : null,
            }),
            SalesTax = new SalesTax { Rate = Often(Between(0, 0.25m, 4), 0), Included = Rarely },
            Shipping = new Shipping { Charged = Between(0, 8, 2), Cost = Between(0, 9, 2), ReturnCost = Between(0, 9, 2) },
            PiecesPerOrder = Often(Between(1, 3, 2), 1),
            CostPerPiece = Between(0, 2, 2),
            Stall = Rarely
                ? new Stall { Cost = Between(0, 300, 2), Pieces = 1 + _random.Next(40), Hours = Rarely ? Between(0, 14, 1) : 0, TimesAYear = 6 }
                : null,
            UsualDiscount = Rarely ? Between(0, 0.4m, 3) : 0,
            LossShare = Rarely ? Between(0, 0.2m, 3) : 0,
            Selling = Rarely
                ? new SellingTime { MinutesPerOrder = Between(0, 30, 1), MinutesPerPiece = Between(0, 15, 1) }
                : new SellingTime(),
            Returns = new Returns { Share = Often(Between(0, 0.3m, 2), 0), ResaleShare = Between(0, 1, 2), FeesRefunded = Rarely },
            PriceStep = step,
            PriceEnding = Rarely ? step * 0.8m : 0,
        };
    }

    private DepreciationRule Wear() => _random.Next(3) switch
    {
        0 => new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = new[] { 0.5m, 3m, 7.5m, 8m }[_random.Next(4)] },
        1 => new DepreciationRule { Method = DepreciationMethod.DecliningBalance, Rate = Between(0, 0.6m, 2) },
        _ => new DepreciationRule { Method = DepreciationMethod.Percentages, Percentages = [0.2m, 0.32m, 0.192m, 0.1152m, 0.1152m, 0.0576m] },
    };

    private TaxRules Tax() => _random.Next(4) switch
    {
        0 => new TaxRules { Kind = TaxKind.None },
        1 => new TaxRules { Kind = TaxKind.Flat, Rate = Between(0, 0.6m, 3) },
        _ => new TaxRules
        {
            Kind = TaxKind.Levies,
            Levies = [.. Enumerable.Range(0, 1 + _random.Next(3)).Select(_ => new Levy
            {
                Share = Often(Between(0.5m, 1, 4), 1),
                Allowance = Often(Between(0, 15000, 0), 0),
                OtherBase = Rarely ? Between(0, 20000, 0) : 0,
                DeductibleShare = Often(Between(0, 1, 2), 0),
                Bands =
                [
                    .. Some(3, () => Between(500, 90000, 0)).Distinct().Order().Select(upTo => new Band { UpTo = upTo, Rate = Between(0, 0.2m, 3) }),
                    new Band { Rate = Between(0, 0.3m, 3) },
                ],
            })],
        },
    };

    private bool Rarely => _random.Next(3) == 0;

    private decimal Often(decimal value, decimal otherwise) => Rarely ? otherwise : value;

    private T Any<T>() where T : struct, Enum => Enum.GetValues<T>()[_random.Next(Enum.GetValues<T>().Length)];

    private List<T> Some<T>(int most, Func<T> one) => [.. Enumerable.Range(0, _random.Next(most + 1)).Select(_ => one())];

    private decimal Between(decimal least, decimal most, int decimals) =>
        decimal.Round(least + (most - least) * _random.Next(1_000_001) / 1_000_000m, decimals);
}
