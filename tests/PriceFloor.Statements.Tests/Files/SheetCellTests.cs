using System.Globalization;
using Xunit;

namespace PriceFloor.Statements.Tests.Files;

/// <summary>Days and amounts in the cells of sheets.</summary>
public sealed class SheetCellTests
{
    [Theory]
    [InlineData("2027-03-04", null, "2027-03-04")]
    [InlineData("2027/3/4", null, "2027-03-04")]
    [InlineData("20270304", null, "2027-03-04")]
    [InlineData("2027-03-04 10:31:00", null, "2027-03-04")]
    [InlineData("2027-03-04T10:31:00Z", null, "2027-03-04")]
    [InlineData("04/03/2027", DateOrder.DayMonthYear, "2027-03-04")]
    [InlineData("04/03/2027", DateOrder.MonthDayYear, "2027-04-03")]
    [InlineData("4.3.27", DateOrder.DayMonthYear, "2027-03-04")]
    [InlineData("27-03-04", DateOrder.YearMonthDay, "2027-03-04")]
    [InlineData("29.02.2028", DateOrder.DayMonthYear, "2028-02-29")]
    [InlineData("04/03/2027", null, "ambiguous-date")]
    [InlineData("31/12/2027", null, "ambiguous-date")]
    [InlineData("29.02.2027", DateOrder.DayMonthYear, "bad-date")]
    [InlineData("31/12/2027", DateOrder.MonthDayYear, "bad-date")]
    [InlineData("2027-13-01", null, "bad-date")]
    [InlineData("4 March 2027", DateOrder.DayMonthYear, "bad-date")]
    [InlineData("04/03-2027", DateOrder.DayMonthYear, "bad-date")]
    [InlineData("", null, "bad-date")]
    public void Dates_are_read_as_written_and_never_guessed(string cell, DateOrder? order, string expected)
    {
        var read = Reading.Of($"Date,Amount\n{cell},1.00", new SheetReading { DateOrder = order }).Value;

        var told = read.Refused is [var refused] ? refused.Code : Reading.Only(read).Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        Assert.Equal(expected, told);
    }

    [Theory]
    [InlineData("12.50", "12.50")]
    [InlineData("+12.50", "12.50")]
    [InlineData("-12.50", "-12.50")]
    [InlineData("\u221212.50", "-12.50")]
    [InlineData("12.50-", "-12.50")]
    [InlineData("(12.50)", "-12.50")]
    [InlineData(".50", "0.50")]
    [InlineData("1,234.50", "1234.50")]
    [InlineData("1,234,567.8", "1234567.80")]
    [InlineData("1234", "1234.00")]
    [InlineData("999999999999999999", "999999999999999999.00")]
    [InlineData("1,234", "bad-amount")]
    [InlineData("1,23.50", "bad-amount")]
    [InlineData("12,34,567.00", "bad-amount")]
    [InlineData(",234.00", "bad-amount")]
    [InlineData("1234,567.00", "bad-amount")]
    [InlineData("1.234.567", "bad-amount")]
    [InlineData("12.", "bad-amount")]
    [InlineData(".", "bad-amount")]
    [InlineData("--1", "bad-amount")]
    [InlineData("-1-", "bad-amount")]
    [InlineData("(-1)", "bad-amount")]
    [InlineData("€12.50", "bad-amount")]
    [InlineData("1e3", "bad-amount")]
    [InlineData("1 234.50", "bad-amount")]
    [InlineData("1234567890123456789", "bad-amount")]
    [InlineData("٣", "bad-amount")]
    [InlineData("", "bad-amount")]
    [InlineData("0.00", "zero")]
    public void Amounts_are_plain_numbers_or_refused(string cell, string expected)
    {
        var read = Reading.Of($"Date,Amount\n2027-03-04,\"{cell}\"").Value;

        var told = read.Refused is [var refused] ? refused.Code : Reading.Only(read).Amount.ToString("0.00", CultureInfo.InvariantCulture);
        Assert.Equal(expected, told);
    }

    [Fact]
    public void With_semicolons_the_comma_is_the_decimal_mark()
    {
        var read = Reading.Of("Date;Amount\n2027-03-04;1.234,50\n2027-03-05;1,234\n2027-03-06;1.234", new SheetReading { Semicolon = true }).Value;

        Assert.Equal("2027-03-04 1234.50 - - \n2027-03-05 1.234 - - ", Reading.Told(read.Statements[0]));
        Assert.Equal("4 bad-amount", Reading.Refused(read));
    }
}
