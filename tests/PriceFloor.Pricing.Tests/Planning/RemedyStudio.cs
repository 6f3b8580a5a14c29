namespace PriceFloor.Pricing.Tests.Planning;

/// <summary>2,000 bench hours at 24.00, sold where nothing is taken.</summary>
internal static class RemedyStudio
{
    public static readonly CostProfile AtTwentyFour = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 48000, Per = Per.Year }],
    };

    public static readonly Making AnHour = new() { MinutesPerPiece = 60 };

    public static Remedy Way(Remedies remedies, RemedyKind kind) => remedies.All.Single(remedy => remedy.Kind == kind);

    public static PriceCheck Check(CostProfile profile, Making making, decimal materials, decimal price, Channel? channel = null,
        Seconds? seconds = null)
    {
        var design = new Design
        {
            Profile = "main",
            Making = making,
            Materials = materials > 0 ? [new MaterialLine { Amount = materials }] : [],
            Seconds = seconds,
        };
        var floor = FloorPrice.Of(UnitCost.Of(design, StudioYear.Of(profile, default).Value).Value, null).Value;
        return ChannelPrices.Of(floor, SellingTerms.Of(channel ?? new Channel { Sells = Sells.Wholesale, Currency = "USD" }).Value)
            .Value.Check(price).Value;
    }
}
