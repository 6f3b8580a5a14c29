namespace PriceFloor.Pricing.Tests.Planning.ByMonth;

/// <summary>The plan of the worked example of the model, for the worked studio.</summary>
internal static class WorkedPlan
{
    public static decimal[] Gifts { get; } = [4, 5, 6, 6, 8, 6, 5, 5, 7, 10, 19, 19];

    public static decimal[] Shops { get; } = [5, 10, 10, 8, 6, 5, 6, 14, 16, 12, 6, 2];

    /// <summary>The plan of the worked example: steady, sales tax remitted by the channels.</summary>
    public static Plan Steady { get; } = new()
    {
        Profile = "main",
        Lines =
        [
            Line("PN-007", "web", 210, 60), Line("PN-007", "gallery", 210, 24), Line("PN-007", "wholesale", 103, 36), Line("BD-008", "web", 78, 60),
            Line("BD-008", "wholesale", 39, 60), Line("RB-021", "web", 64, 130), Line("RB-014", "web", 58, 120), Line("RB-014", "fair", 60, 40),
            Line("OR-002", "fair", 48, 60), Line("OR-002", "web", 44, 110), Line("OR-002", "wholesale", 22, 96), Line("BV-004", "web", 95, 60),
            Line("MB-001", "web", 42, 40), Line("FG-003", "fair", 58, 50), Line("ER-003", "market", 32.95m, 60), Line("GB-001", "gallery", 290, 10),
            Line("MB-005", "gallery", 300, 8), Line("BD-012", "gallery", 300, 6), Line("OR-006", "market", 52.95m, 60),
            Line("DP-002", "market", 115.95m, 24),
        ],
        Seasons = new Dictionary<string, IReadOnlyList<decimal>>
        {
            ["web"] = Gifts,
            ["market"] = Gifts,
            ["fair"] = [0, 0, 0, 5, 15, 15, 10, 10, 10, 5, 25, 5],
            ["gallery"] = [5, 5, 8, 8, 10, 10, 10, 8, 8, 8, 10, 10],
            ["wholesale"] = Shops,
        },
        Work = [4, 4, 4, 4, 4, 4, 3, 2.5m, 4, 4.5m, 4.5m, 3.5m],
        Terms =
        [
            new PlanTerms { Channel = "wholesale", DepositShare = 0.3m, DepositMonthsBefore = 1, PaidAfterMonths = 1, RemittedByChannel = true },
            new PlanTerms { Channel = "gallery", PaidAfterMonths = 1, RemittedByChannel = true },
            new PlanTerms { Channel = "web", RemittedByChannel = true },
            new PlanTerms { Channel = "market", RemittedByChannel = true },
            new PlanTerms { Channel = "fair", RemittedByChannel = true },
        ],
        PaidIn =
        [
            Paid("/expenses/Studio and liability insurance", 3), Paid("/expenses/Bookkeeper and yearly return", 2),
            Paid("/expenses/Business licence and sales permits", 1), Paid("/expenses/One course a year", 10),
            Paid("/expenses/Photographer, two days a year", 4, 9),
        ],
        TaxPaid =
        [
            new TaxPayment { Month = 1, Amount = 2300 }, new TaxPayment { Month = 4, Share = 0.25m }, new TaxPayment { Month = 6, Share = 0.25m },
            new TaxPayment { Month = 9, Share = 0.25m },
        ],
        Opening = new Opening { Cash = 3000, TaxSetAside = 2300 },
        Reserve = 2000,
        Steady = true,
    };

    /// <summary>The same plan for a year that nothing but its opening comes into.</summary>
    public static Plan FirstYear { get; } = Steady with
    {
        Steady = false,
        Opening = Steady.Opening with
        {
            OwedToUs = [new OwedToUs { Month = 1, Amount = 764.93m }],
            Stock = [new StockOfPieces { Sku = "OR-002", Pieces = 40 }],
        },
    };

    public static YearByMonth ByMonth(Plan plan) => YearByMonth.Of(WorkedStudio.Year, plan, [.. plan.Lines.Select(Priced)]).Value;

    private static PlannedLine Priced(PlanLine line)
    {
        var floor = FloorPrice.Of(WorkedStudio.Piece(line.Sku), null).Value;
        return new(ChannelPrices.Of(floor, WorkedStudio.Terms(line.Channel)).Value.Check(line.Price!.Value).Value, line.Units);
    }

    private static PlanLine Line(string sku, string channel, decimal price, decimal units) =>
        new() { Sku = sku, Channel = channel, Price = price, Units = units, Season = channel };

    private static PaidIn Paid(string at, params decimal[] months) => new() { At = at, Months = months };
}
