using Xunit;

namespace PriceFloor.Pricing.Tests.Documents;

public sealed class FirstNumbersTests
{
    [Theory]
    [InlineData(0, "60.00")] // the trade's plain rule: (24,000 + 36,000) / 50 / 5 / 4
    [InlineData(0.2, "69.00")] // 36,000 are left of a profit of 45,000: (24,000 + 45,000) / 1,000
    public void Eight_numbers_make_the_plain_rule(double taxRate, string floor)
    {
        var numbers = new FirstNumbers
        {
            Currency = "USD",
            ExpensesPerYear = 24000,
            LivingPerMonth = 3000,
            WeeksPerYear = 50,
            DaysPerWeek = 5,
            HoursPerDay = 8,
            PiecesPerDay = 4,
            TaxRate = (decimal)taxRate,
        };
        var year = StudioYear.Of(numbers.Profile(new DateOnly(2027, 1, 1)), default).Value;
        var piece = UnitCost.Of(numbers.Design("main"), year).Value;
        Assert.Equal(floor, year.Currency.RoundUp(piece.Floor).ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(18m, year.TakeHomePerHour); // 36,000 / 2,000 h
        Assert.Equal(1000m, piece.PiecesPerYear);
    }
}
