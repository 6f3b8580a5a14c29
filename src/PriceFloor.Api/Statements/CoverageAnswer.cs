using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>The days of an account that the files cover together.</summary>
/// <param name="Account">The account.</param>
/// <param name="Months">The months covered.</param>
/// <param name="Covered">The days that the files cover.</param>
/// <param name="Gaps">Days in between that no file covers.</param>
/// <param name="Overlaps">Days that more than one file covers; their lines count once.</param>
public sealed record CoverageAnswer(string Account, decimal Months, IReadOnlyList<PeriodAnswer> Covered, IReadOnlyList<PeriodAnswer> Gaps,
    IReadOnlyList<PeriodAnswer> Overlaps)
{
    public static CoverageAnswer Of(Coverage coverage) =>
        new(coverage.Account, Rounding.Trim(Rounding.Nearest(coverage.Months, 4)), PeriodAnswer.Of(coverage.Covered), PeriodAnswer.Of(coverage.Gaps),
            PeriodAnswer.Of(coverage.Overlaps));
}

/// <summary>Whole days, both ends included.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day, included.</param>
public sealed record PeriodAnswer(DateOnly From, DateOnly To)
{
    public static IReadOnlyList<PeriodAnswer> Of(IEnumerable<Period> periods) =>
        [.. periods.Select(period => new PeriodAnswer(period.From, period.To))];
}
