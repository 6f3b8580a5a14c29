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
        var coverage = Coverage("2026-05-01", "2026-08-31", "2026-01-01", "2026-03-31", "2026-08-15", "2026-12-31");

        Assert.Equal([new Period(Bank.Day("2026-04-01"), Bank.Day("2026-04-30"))], coverage.Gaps);
        Assert.Equal([new Period(Bank.Day("2026-08-15"), Bank.Day("2026-08-31"))], coverage.Overlaps);
        Assert.Equal(11, coverage.Months);      // 3 to March, 8 from May
    }

    [Fact]
    public void Files_that_follow_one_another_leave_no_gap()
    {
        var coverage = Coverage("2026-01-01", "2026-06-30", "2026-07-01", "2026-12-31");

        Assert.Empty(coverage.Gaps);
        Assert.Empty(coverage.Overlaps);
        Assert.True(coverage.IsWholeYear);
    }

    [Fact]
    public void A_file_within_another_takes_nothing_away_from_it()
    {
        var coverage = Coverage("2026-01-01", "2026-12-31", "2026-04-01", "2026-04-30");

        Assert.Equal(12, coverage.Months);
        Assert.Single(coverage.Overlaps);
    }

    [Fact]
    public void Two_sheets_that_part_a_month_between_them_overlap_in_no_day()
    {
        var sorting = Bank.Sort(Bank.Rules(Bank.Rule("rent", Placement.Business)),
            Bank.File("current", null, null, Bank.Line("2026-01-05", -1, "Rent"), Bank.Line("2026-03-12", -1, "Rent")),
            Bank.File("current", null, null, Bank.Line("2026-03-16", -1, "Rent"), Bank.Line("2026-06-05", -1, "Rent")));
        var coverage = Assert.Single(sorting.Coverage);

        Assert.Equal((0, 0, 6m), (coverage.Overlaps.Count, coverage.Gaps.Count, coverage.Months));
    }

    [Fact]
    public void Two_sheets_with_the_same_days_overlap_in_those()
    {
        var sorting = Bank.Sort(Bank.Rules(Bank.Rule("rent", Placement.Business)),
            Bank.File("current", null, null, Bank.Line("2026-01-05", -1, "Rent"), Bank.Line("2026-03-12", -1, "Rent")),
            Bank.File("current", null, null, Bank.Line("2026-03-10", -2, "Rent"), Bank.Line("2026-06-05", -1, "Rent")));

        Assert.Equal([new Period(Bank.Day("2026-03-10"), Bank.Day("2026-03-12"))], Assert.Single(sorting.Coverage).Overlaps);
    }

    private static Coverage Coverage(params string[] days) =>
        new("current",
            [.. days.Chunk(2).Select(ends => new Period(Bank.Day(ends[0]), Bank.Day(ends[1]))).Select(period => new Covered(period, period))]);
}
