using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>The outcome of the lines: every line is in exactly one of these, and they add up to what was read.</summary>
public sealed record AccountedAnswer(CountAnswer Read, CountAnswer Placed, CountAnswer Unplaced, CountAnswer Paired, CountAnswer OwnAccount,
    CountAnswer LeftOut, CountAnswer Duplicate, CountAnswer OutsidePeriod, CountAnswer ForeignCurrency)
{
    public static AccountedAnswer Of(Sorting sorting)
    {
        CountAnswer With(LineOutcome outcome) => CountAnswer.Of(sorting.Of[outcome].Select(sorted => sorted.Entry.Transaction), sorting.Currency);
        return new AccountedAnswer(CountAnswer.Of(sorting.All.Select(sorted => sorted.Entry.Transaction), sorting.Currency), With(LineOutcome.Placed),
            With(LineOutcome.Unplaced), With(LineOutcome.Paired), With(LineOutcome.OwnAccount),
            With(LineOutcome.LeftOut), With(LineOutcome.Duplicate), With(LineOutcome.OutsidePeriod), With(LineOutcome.ForeignCurrency));
    }
}
