using Xunit;

namespace PriceFloor.Pricing.Tests.Documents;

public sealed class DocumentsTests
{
    [Theory]
    [InlineData(Per.Week, 52)]
    [InlineData(Per.Fortnight, 26)]
    [InlineData(Per.FourWeeks, 13)]
    [InlineData(Per.Month, 12)]
    [InlineData(Per.Quarter, 4)]
    [InlineData(Per.Year, 1)]
    [InlineData(Per.Time, 8)]
    public void Whatever_comes_round_comes_round_all_year(Per per, int times)
    {
        IRecurring[] lines =
        [
            new Expense { Amount = 1.25m, Per = per, Times = 8 },
            new HouseholdLine { Amount = 1.25m, Per = per, Times = 8 },
            new OtherIncome { Amount = 1.25m, Per = per, Times = 8, Kind = IncomeKind.Net },
        ];
        Assert.All(lines, line => Assert.Equal((times, times * 1.25m), (line.TimesAYear(), line.Amount())));
    }

    [Fact]
    public void Eight_fairs_at_150_are_1200_a_year() => Assert.Equal(1200m, new Expense { Amount = 150, Per = Per.Time, Times = 8 }.Amount());

    [Fact]
    public void A_short_document_is_a_whole_one()
    {
        var profile = new CostProfile { Currency = "USD", Calendar = new StudioCalendar { WeeksPerYear = 48, DaysPerWeek = 5, HoursPerDay = 8 } };
        Assert.Equal((1m, TaxKind.None, 1m, 2m),
            (profile.Calendar.BenchShare, profile.Tax.Kind, profile.SoldShare, profile.PriceRule.RetailMultiple));

        var making = new Making { Steps = [new Step { HandsOnMinutes = 1 }] };
        Assert.Equal((1m, 1m, 1m, true), (making.GoodShare, making.Steps[0].GoodShare, making.Steps[0].BatchSize, making.Steps[0].MayBeHurried));

        var line = new MaterialLine { Amount = 1 };
        Assert.Equal(("start", 0m, 1m), (line.At, line.WasteShare, line.BatchSize));

        var channel = new Channel { Sells = Sells.Retail, Currency = "USD", Fees = [new Fee()] };
        Assert.Equal((1m, false, false, FeeBase.Price),
            (channel.PiecesPerOrder, channel.SalesTax.Included, channel.Returns.FeesRefunded, channel.Fees[0].Of));
        Assert.Equal(10m, Sale.Of(10, channel).Net); // nothing is taken where nothing is said

        Assert.Equal((true, 1m), (new Expense { Amount = 1, Per = Per.Year }.Deductible, new Levy { Bands = [new Band()] }.Share));
    }
}
