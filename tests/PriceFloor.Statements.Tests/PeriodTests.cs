using Xunit;

namespace PriceFloor.Statements.Tests;

public sealed class PeriodTests
{
    [Theory]
    [InlineData("2026-01-01", "2026-12-31", "12")]
    [InlineData("2026-03-15", "2027-03-14", "12")]
    [InlineData("2024-02-29", "2025-02-27", "12")]      // a year from a leap day ends on the 27th: 28 February is its next first day
    [InlineData("2026-01-16", "2026-07-15", "6")]
    [InlineData("2026-01-01", "2026-06-15", "5.5")]     // 15 of June's 30 days
    [InlineData("2026-02-01", "2026-02-07", "0.25")]    // 7 of 28 days
    public void Months_are_whole_ones_and_the_last_by_its_days(string from, string to, string months) =>
        Assert.Equal(decimal.Parse(months, System.Globalization.CultureInfo.InvariantCulture), new Period(Bank.Day(from), Bank.Day(to)).Months);

    [Fact]
    public void Days_between_two_files_are_a_gap_and_days_in_both_an_overlap()
    {
        var coverage = new Coverage("current", [new(Bank.Day("2026-05-01"), Bank.Day("2026-08-31")), new(Bank.Day("2026-01-01"), Bank.Day("2026-03-31")), new(Bank.Day("2026-08-15"), Bank.Day("2026-12-31"))]);

        Assert.Equal([new Period(Bank.Day("2026-04-01"), Bank.Day("2026-04-30"))], coverage.Gaps);
        Assert.Equal([new Period(Bank.Day("2026-08-15"), Bank.Day("2026-08-31"))], coverage.Overlaps);
        Assert.Equal(11, coverage.Months);      // 3 to March, 8 from May
    }

    [Fact]
    public void Files_that_follow_one_another_leave_no_gap()
    {
        var coverage = new Coverage("current", [new(Bank.Day("2026-01-01"), Bank.Day("2026-06-30")), new(Bank.Day("2026-07-01"), Bank.Day("2026-12-31"))]);

        Assert.Empty(coverage.Gaps);
        Assert.Empty(coverage.Overlaps);
        Assert.True(coverage.IsWholeYear);
    }

    [Fact]
    public void A_file_within_another_takes_nothing_away_from_it()
    {
        var coverage = new Coverage("current", [new(Bank.Day("2026-01-01"), Bank.Day("2026-12-31")), new(Bank.Day("2026-04-01"), Bank.Day("2026-04-30"))]);

        Assert.Equal(12, coverage.Months);
        Assert.Single(coverage.Overlaps);
    }
}
