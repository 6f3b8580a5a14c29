namespace PriceFloor.Pricing.Tests.Planning.ByMonth;

/// <summary>
/// A year that can be computed by hand: 48 weeks of 5 days of 5 hours are 1,200 hours, 100 a month. A piece takes an hour and 3.00 of materials, is
/// sold for 23.00, and leaves 20.00. Nothing else is paid unless a test says so.
/// </summary>
internal static class SmallYear
{
    public static CostProfile Profile { get; } = new()
    {
        Currency = "USD",
        YearStart = new DateOnly(2027, 1, 1),
        Calendar = new StudioCalendar { WeeksPerYear = 48, DaysPerWeek = 5, HoursPerDay = 5 },
        Expenses = [new Expense { Name = "Glass", Amount = 1, Per = Per.Year, TracedTo = TracedTo.Piece }],
    };

    public static Channel Stall { get; } = new() { Sells = Sells.Retail, Currency = "USD" };

    private static readonly Design s_piece = new()
    {
        Profile = "main",
        Making = new Making { MinutesPerPiece = 60 },
        Materials = [new MaterialLine { Amount = 3 }],
    };

    /// <summary>So many pieces in a season, and nothing else.</summary>
    public static Plan Of(decimal units, params decimal[] season) => new()
    {
        Profile = "main",
        Lines = [Line("stall", units, season.Length > 0 ? "season" : null)],
        Seasons = season.Length > 0 ? new Dictionary<string, IReadOnlyList<decimal>> { ["season"] = season } : [],
    };

    public static PlanLine Line(string channel, decimal units, string? season = null) =>
        new() { Sku = "piece", Channel = channel, Price = 23, Units = units, Season = season };

    public static YearByMonth ByMonth(Plan plan, CostProfile? profile = null, Channel? channel = null, decimal price = 23)
    {
        var year = StudioYear.Of(profile ?? Profile, default).Value;
        var floor = FloorPrice.Of(UnitCost.Of(s_piece, year).Value, null).Value;
        var check = ChannelPrices.Of(floor, SellingTerms.Of(channel ?? Stall).Value).Value.Check(price).Value;
        return YearByMonth.Of(year, plan, [.. plan.Lines.Select(line => new PlannedLine(check, line.Units))]).Value;
    }

    public static IEnumerable<decimal> Each(YearByMonth year, Func<PlanMonth, decimal> figure) =>
        year.Months.Select(month => Rounding.Trim(Rounding.Nearest(figure(month), 4)));
}
