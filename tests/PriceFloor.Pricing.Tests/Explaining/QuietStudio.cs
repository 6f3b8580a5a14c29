namespace PriceFloor.Pricing.Tests.Explaining;

/// <summary>A profile that no warning is about.</summary>
internal static class QuietStudio
{
    public static readonly CostProfile Profile = new()
    {
        Currency = "USD",
        YearStart = new DateOnly(2027, 1, 1),
        Calendar = new StudioCalendar { WeeksPerYear = 48, DaysPerWeek = 5, HoursPerDay = 8, BenchShare = 0.6m },
        Expenses = [new Expense { Amount = 24000, Per = Per.Year }],
        Household = [new HouseholdLine { Amount = 3000, Per = Per.Month }],
    };
}
