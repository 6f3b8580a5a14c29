using PriceFloor.Pricing.Explaining;
using Xunit;

namespace PriceFloor.Pricing.Tests.Planning.ByMonth;

/// <summary>Worked by hand: a month has 100 hours, a piece takes one.</summary>
public sealed class MakingAheadTests
{
    [Fact]
    public void Pieces_are_made_in_the_month_of_their_sale_while_the_hours_are_enough()
    {
        var year = SmallYear.ByMonth(SmallYear.Of(1200));
        Assert.Equal(Enumerable.Repeat(100m, 12), SmallYear.Each(year, month => month.MadeHours));
        Assert.Equal(Enumerable.Repeat(0m, 12), SmallYear.Each(year, month => month.StockHours));
        Assert.Null(year.BuildFrom);
        Assert.Equal(0, year.StockAtMost);
    }

    [Fact]
    public void A_season_is_made_ahead_as_late_as_the_hours_allow()
    {
        // 300 of 700 pieces in December, 400 in November: December lacks 200 hours and November 300 + 200, so work begins in June.
        var year = SmallYear.ByMonth(SmallYear.Of(700, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 4, 3));
        Assert.Equal([0, 0, 0, 0, 0, 100, 100, 100, 100, 100, 100, 100], SmallYear.Each(year, month => month.MadeHours));
        Assert.Equal([0, 0, 0, 0, 0, 0, 100, 200, 300, 400, 500, 200], SmallYear.Each(year, month => month.StockHours));
        Assert.Equal((6, 500m), (year.BuildFrom!.Number, year.StockAtMost));
        // Materials are paid with the hours that work them: 3.00 an hour.
        Assert.Equal([0, 0, 0, 0, 0, 300, 300, 300, 300, 300, 300, 300], SmallYear.Each(year, month => month.Materials));
    }

    [Fact]
    public void What_a_holiday_sells_is_made_before_it()
    {
        // 60 pieces a month, and no work in August: its 60 hours are worked in July (40) and June (20).
        var plan = SmallYear.Of(720) with { Work = [1, 1, 1, 1, 1, 1, 1, 0, 1, 1, 1, 1] };
        // 1,200 hours over 11 months are 109.0909 a month: July makes 60 + 49.0909, June 60 + 10.9091.
        var year = SmallYear.ByMonth(plan);
        Assert.Equal([60, 60, 60, 60, 60, 70.9091m, 109.0909m, 0, 60, 60, 60, 60], SmallYear.Each(year, month => month.MadeHours));
        Assert.Equal(6, year.BuildFrom!.Number);
    }

    [Fact]
    public void A_first_year_without_stock_makes_what_January_lacks_past_its_hours_and_says_so()
    {
        // 250 pieces in January, of which 150 should lie ready.
        var year = SmallYear.ByMonth(SmallYear.Of(250, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0));
        Assert.Equal(250m, year.Months[0].MadeHours);
        Assert.Equal(150m, year.Months[0].StockHours);
        Assert.Contains(PlanWarnings.In(year), warning => warning.Code == WarningCodes.StockNeededAtStart && warning.Message.Contains("150 hours"));
    }

    [Fact]
    public void A_steady_year_makes_it_in_the_December_before()
    {
        var year = SmallYear.ByMonth(SmallYear.Of(250, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0) with { Steady = true });
        Assert.Equal([100, 0, 0, 0, 0, 0, 0, 0, 0, 0, 50, 100], SmallYear.Each(year, month => month.MadeHours));
        Assert.Equal([150, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 50], SmallYear.Each(year, month => month.StockHours));
        Assert.Equal([300, 0, 0, 0, 0, 0, 0, 0, 0, 0, 150, 300], SmallYear.Each(year, month => month.Materials));
        Assert.DoesNotContain(PlanWarnings.In(year), warning => warning.Code == WarningCodes.StockNeededAtStart);
    }

    [Fact]
    public void Finished_pieces_serve_the_earliest_sales()
    {
        // 100 a month; 130 lie ready: January needs none made, February 70.
        var plan = SmallYear.Of(1200);
        var year = SmallYear.ByMonth(plan with { Opening = new Opening { Stock = [new StockOfPieces { Sku = "piece", Pieces = 130 }] } });
        Assert.Equal([0, 70, 100], SmallYear.Each(year, month => month.MadeHours).Take(3));
        Assert.Equal([100, 100, 100], SmallYear.Each(year, month => month.NeedHours).Take(3)); // what the sales took
        Assert.Equal([0, 210, 300], SmallYear.Each(year, month => month.Materials).Take(3));
        Assert.Equal(390m, year.Parts.Single(part => part.Kind == CashPartKind.MaterialsInStock).Amount); // 130 * 3.00 were paid before
    }

    [Fact]
    public void More_hours_than_the_year_has_are_worked_by_no_plan()
    {
        foreach (var steady in new[] { false, true })
        {
            var year = SmallYear.ByMonth(SmallYear.Of(1300) with { Steady = steady });
            Assert.False(year.WithinCapacity);
            Assert.Contains(PlanWarnings.In(year), warning => warning.Code == WarningCodes.OverCapacity);
            Assert.Equal(1300m, Rounding.Settle(year.Months.Sum(month => month.MadeHours)));
        }
    }

    [Fact]
    public void Hours_kept_back_are_not_there()
    {
        var year = SmallYear.ByMonth(SmallYear.Of(600) with { HoursKeptBack = 240 });
        Assert.Equal(Enumerable.Repeat(80m, 12), SmallYear.Each(year, month => month.Capacity)); // (1,200 - 240) / 12
    }

    [Fact]
    public void No_pieces_take_no_hours()
    {
        var year = SmallYear.ByMonth(SmallYear.Of(0));
        Assert.All(year.Months, month => Assert.Equal((0m, 0m, 0m), (month.NeedHours, month.MadeHours, month.Materials)));
        Assert.Null(year.BuildFrom);
    }
}
