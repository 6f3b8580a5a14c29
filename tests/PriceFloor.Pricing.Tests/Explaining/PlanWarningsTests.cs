using PriceFloor.Pricing.Tests.Planning.ByMonth;
using Xunit;

namespace PriceFloor.Pricing.Tests.Explaining;

/// <summary>Each warning about the months of a plan, by a plan that has nothing else to be warned of.</summary>
public sealed class PlanWarningsTests
{
    private static readonly CostProfile s_withHousehold =
        SmallYear.Profile with { Household = [new HouseholdLine { Amount = 100, Per = Per.Month }] };

    [Fact]
    public void A_plan_that_nothing_is_wrong_with_is_not_warned_of() => Assert.Empty(Of(SmallYear.Of(100)));

    [Fact]
    public void Cash_that_falls_below_zero() =>
        Assert.Equal(["cash-below-zero"], Of(SmallYear.Of(0), s_withHousehold)); // 12 x 100 are paid and nothing comes in

    [Fact]
    public void Cash_that_falls_below_the_reserve() => Assert.Equal(["below-reserve"], // 1,500 less 1,200
        Of(SmallYear.Of(0) with { Opening = new Opening { Cash = 1500 }, Reserve = 301 }, s_withHousehold));

    [Fact]
    public void More_hours_than_the_year_has() => Assert.Contains("over-capacity", Of(SmallYear.Of(1201))); // 1,200 hours

    [Fact]
    public void Work_that_should_lie_ready_when_the_year_begins() => // 150 hours for January, which has 100
        Assert.Equal(["stock-needed-at-start"], Of(SmallYear.Of(150, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0)));

    [Fact]
    public void Three_months_running_without_an_hour_to_spare()
    {
        // Materials are paid as it is made, from October to December.
        var opening = new Opening { Cash = 1000 };
        Assert.Equal(["season-unlike-work"], Of(SmallYear.Of(300, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1) with { Opening = opening }));
        Assert.Empty(Of(SmallYear.Of(299, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1) with { Opening = opening }));
    }

    [Fact]
    public void Tax_that_no_payment_covers()
    {
        var taxed = SmallYear.Profile with { Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.1m } };
        Assert.Equal(["tax-not-covered"], Of(SmallYear.Of(100), taxed)); // 2,000 of profit, 200 of tax
        Assert.Empty(Of(SmallYear.Of(100) with { TaxPaid = [new TaxPayment { Month = 12, Share = 1 }] }, taxed));
    }

    [Fact]
    public void A_shop_whose_time_to_pay_nothing_says()
    {
        var shop = SmallYear.Stall with { Sells = Sells.Wholesale };
        Assert.Equal(["terms-unknown"], Of(SmallYear.Of(100), channel: shop));
        Assert.Empty(Of(SmallYear.Of(100) with { Terms = [new PlanTerms { Channel = "stall" }] }, channel: shop));
    }

    [Fact]
    public void A_bill_whose_month_nothing_says()
    {
        var insured = SmallYear.Profile with
        {
            Expenses = [.. SmallYear.Profile.Expenses, new Expense { Name = "Insurance", Amount = 120, Per = Per.Year }],
        };
        Assert.Equal(["bills-month-assumed"], Of(SmallYear.Of(100) with { Opening = new Opening { Cash = 500 } }, insured));
        Assert.Empty(Of(SmallYear.Of(100) with
        {
            Opening = new Opening { Cash = 500 },
            PaidIn = [new PaidIn { At = "/expenses/Insurance", Months = [3] }],
        }, insured));
    }

    [Fact]
    public void Weeks_of_work_that_are_not_the_calendars()
    {
        Assert.Equal(["work-weeks-differ"], Of(SmallYear.Of(100) with { Work = [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1] }));
        Assert.Empty(Of(SmallYear.Of(100) with { Work = [4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4] })); // 48
    }

    private static IEnumerable<string> Of(Plan plan, CostProfile? profile = null, Channel? channel = null) =>
        PlanWarnings.In(SmallYear.ByMonth(plan, profile, channel)).Select(warning => warning.Code.Word);
}
