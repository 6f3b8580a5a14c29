using Xunit;

namespace PriceFloor.Pricing.Tests.Planning.ByMonth;

/// <summary>The worked example of the model: a year that nearly closes, and is out of cash in September.</summary>
public sealed class WorkedYearTests
{
    private static readonly YearByMonth s_steady = WorkedPlan.ByMonth(WorkedPlan.Steady);
    private static readonly YearByMonth s_first = WorkedPlan.ByMonth(WorkedPlan.FirstYear);

    [Fact]
    public void The_hours_of_autumn_are_worked_from_September_on()
    {
        Assert.Equal([30.0m, 40.7m, 48.3m, 50.1m, 67.6m, 56.5m, 48.6m, 56.0m, 68.3m, 74.7m, 130.8m, 110.0m], Hours(month => month.NeedHours));
        Assert.Equal([98.3m, 98.3m, 98.3m, 98.3m, 98.3m, 98.3m, 73.8m, 61.5m, 98.3m, 110.6m, 110.6m, 86.1m], Hours(month => month.Capacity));
        Assert.Equal([0, 0, 0, 0, 0, 0, 0, 0, 0, 8.2m, 44.1m, 24.0m], Hours(month => month.StockHours));
        Assert.Equal([30.0m, 40.7m, 48.3m, 50.1m, 67.6m, 56.5m, 48.6m, 56.0m, 76.5m, 110.6m, 110.6m, 86.1m], Hours(month => month.MadeHours));
        Assert.Equal(9, s_steady.BuildFrom!.Number);
    }

    [Fact]
    public void The_money_comes_in_when_it_is_paid()
    {
        Assert.Equal([2934.64m, 3255.01m, 3965.66m, 4433.34m, 5903.86m, 4981.38m, 4312.62m, 4414.34m, 5595.02m, 6696.95m, 12009.79m, 10610.60m],
            Money(s_steady, month => month.Receipts));
        Assert.Equal((764.93m, 117.36m), (Cents(s_steady.OwedAtEnd), Cents(s_steady.Months[11].DepositsHeld)));
    }

    [Fact]
    public void Cash_is_lowest_in_September()
    {
        Assert.Equal([-981.33m, -5067.01m, -6572.80m, -9264.20m, -8208.24m, -10244.91m, -10568.09m, -10871.45m, -12838.95m, -11893.21m, -5213.45m,
            192.39m], Money(s_steady, month => month.Cash));
        Assert.Equal([-1546.07m, -6069.39m, -8050.58m, -9405.03m, -8748.16m, -10385.74m, -10896.71m, -11247.01m, -13120.62m, -12034.05m, -6116.25m,
            -2075.31m], Money(s_steady, month => month.Free));
        Assert.Equal((9, 9), (s_steady.LowestCash.Number, s_steady.LowestFree.Number));
        Assert.Equal(17838.95m, Cents(s_steady.OpeningNeeded)); // 2,000 reserve + 3,000 + 12,838.95
    }

    [Fact]
    public void Tax_is_paid_evenly_while_profit_comes_late()
    {
        Assert.Equal((42644.68m, 8601.33m), (Cents(s_steady.Profit), Cents(s_steady.Tax)));
        Assert.Equal(-317.53m, Cents(s_steady.Months[3].Aside));
    }

    [Fact]
    public void The_bridge_from_profit_to_cash_has_no_gap()
    {
        Assert.Equal(-2807.61m, Cents(s_steady.Change));
        Assert.Equal(0, Cents(s_steady.Change - s_steady.Parts.Sum(part => part.Amount)));
        Assert.Equal(-2775.93m, Cents(s_first.Change));
        Assert.Equal(0, Cents(s_first.Change - s_first.Parts.Sum(part => part.Amount)));
    }

    [Fact]
    public void In_a_first_year_pieces_that_lie_ready_need_not_be_made_and_next_years_deposits_do_not_come()
    {
        Assert.Equal([27.3m, 36.3m, 43.7m], s_first.Months.Take(3).Select(month => Rounding.Nearest(month.MadeHours, 1)));
        Assert.Equal(10493.24m, Cents(s_first.Months[11].Receipts));
        Assert.Equal((9, -12689.91m), (s_first.LowestCash.Number, Cents(s_first.LowestCash.Cash)));
        Assert.Equal((9, -12971.58m), (s_first.LowestFree.Number, Cents(s_first.LowestFree.Free)));
    }

    private static IEnumerable<decimal> Hours(Func<PlanMonth, decimal> figure) => s_steady.Months.Select(month => Rounding.Nearest(figure(month), 1));

    private static IEnumerable<decimal> Money(YearByMonth year, Func<PlanMonth, decimal> figure) => year.Months.Select(month => Cents(figure(month)));

    private static decimal Cents(decimal amount) => Rounding.Nearest(amount, 2);
}
