namespace PriceFloor.Pricing.Tests;

/// <summary>The invented studio of the documentation, with something in nearly every field.</summary>
public static class ExampleStudio
{
    public static CostProfile Profile { get; } = new()
    {
        Name = "Year 2027",
        Currency = "USD",
        YearStart = new DateOnly(2027, 1, 1),
        Calendar = new StudioCalendar { WeeksPerYear = 48, DaysPerWeek = 5, HoursPerDay = 8, BenchShare = 0.65m },
        Expenses =
        [
            new Expense { Name = "Bench rent", Amount = 540, Per = Per.Month, CostKind = CostKind.Rent },
            new Expense { Name = "Rod and frit", Amount = 3900, Per = Per.Year, CostKind = CostKind.Materials, TracedTo = TracedTo.Piece },
            new Expense { Name = "Van loan principal", Amount = 150, Per = Per.Month, CostKind = CostKind.InterestAndLoans, Deductible = false },
        ],
        Equipment =
        [
            new Equipment
            {
                Name = "Kiln",
                Cost = 3200,
                Salvage = 200,
                InService = new DateOnly(2025, 4, 1),
                Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 8 },
            },
        ],
        Household =
        [
            new HouseholdLine { Name = "Home rent", Amount = 1450, Per = Per.Month, BusinessShare = 0.12m },
            new HouseholdLine { Name = "Savings and emergencies", Amount = 250, Per = Per.Month },
        ],
        OtherIncome = [new OtherIncome { Name = "Evening classes", Amount = 280, Per = Per.Month, Kind = IncomeKind.Taxable, DaysPerYear = 12 }],
        Tax = new TaxRules
        {
            Kind = TaxKind.Levies,
            Levies =
            [
                new Levy
                {
                    Name = "self-employment",
                    Share = 0.9235m,
                    DeductibleShare = 0.5m,
                    Bands = [new Band { UpTo = 176100, Rate = 0.153m }, new Band { Rate = 0.029m }],
                },
                new Levy
                {
                    Name = "income tax",
                    Allowance = 15750,
                    Bands = [new Band { UpTo = 11925, Rate = 0.10m }, new Band { UpTo = 48475, Rate = 0.12m }, new Band { Rate = 0.22m }],
                },
            ],
        },
        Materials = [new StockMaterial { Material = "clear-rod", Unit = "kg", Price = 38.00m },
            new StockMaterial { Material = "kiln-kwh", Unit = "kWh", Price = 0.21m }],
        Limits = [new ResourceLimit { Name = "kiln", LoadsPerYear = 240 }],
        Pay = new Pay { Amount = 14, Per = PayPer.Hour },
        Helpers = [new Helper { Name = "Saturday help", BenchHoursPerYear = 120 }],
        SoldShare = 0.95m,
        PriceRule = new PriceRule { RetailMultiple = 2 },
    };

    public static Design Pendant { get; } = new()
    {
        Name = "River drop pendant",
        Profile = "main",
        Making = new Making
        {
            Steps =
            [
                new Step { Name = "torch", HandsOnMinutes = 34, GoodShare = 0.95m },
                new Step { Name = "anneal", HandsOnMinutes = 20, BatchSize = 24, GoodShare = 0.98m, MayBeHurried = false, Uses = "kiln" },
                new Step { Name = "polish", HandsOnMinutes = 9 },
            ],
            SetupMinutes = 15,
            RunSize = 12,
        },
        Materials =
        [
            new MaterialLine { Material = "clear-rod", Quantity = 0.062m, WasteShare = 0.08m },
            new MaterialLine { Material = "kiln-kwh", Quantity = 16, BatchSize = 24, At = "anneal" },
            new MaterialLine { Name = "gift box", Amount = 1.55m, At = "finish" },
        ],
        Seconds = new Seconds { Share = 0.4m, Price = 11 },
        SoldShare = 0.9m,
    };

    public static Channel WebShop { get; } = new()
    {
        Name = "Own web shop",
        Sells = Sells.Retail,
        Currency = "USD",
        Fees = [new Fee { Name = "card", Rate = 0.024m, Fixed = 0.25m, Of = FeeBase.Paid }],
        Shipping = new Shipping { Charged = 5.00m, Cost = 6.20m, ReturnCost = 6.20m },
        PiecesPerOrder = 1.4m,
        CostPerPiece = 0.80m,
        Returns = new Returns { Share = 0.03m, ResaleShare = 0.8m },
        PriceStep = 1.00m,
    };
}
