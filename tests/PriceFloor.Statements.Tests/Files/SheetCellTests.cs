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
    [InlineData("31/12/2027", null, "2027-12-31")]
    [InlineData("12/31/2027", null, "2027-12-31")]
    [InlineData("99/99/2027", null, "bad-date")]
    [InlineData("13/03/27", null, "ambiguous-date")]
    [InlineData("03/13/27", null, "2027-03-13")]
    [InlineData("29.02.2027", DateOrder.DayMonthYear, "bad-date")]
    [InlineData("31/12/2027", DateOrder.MonthDayYear, "bad-date")]
    [InlineData("2027-13-01", null, "bad-date")]
    [InlineData("4 March 2027", null, "2027-03-04")]
    [InlineData("4 March 2027", DateOrder.MonthDayYear, "2027-03-04")]
    [InlineData("04-Mar-27", null, "2027-03-04")]
    [InlineData("27-Mar-04", DateOrder.YearMonthDay, "2027-03-04")]
    [InlineData("2027-MAR-04", null, "2027-03-04")]
    [InlineData("March 4, 2027", null, "2027-03-04")]
    [InlineData("Sept. 4th 2027 10:31 am", null, "2027-09-04")]
    [InlineData("04 Oct 2027 10:31", null, "2027-10-04")]
    [InlineData("30 Feb 2027", null, "bad-date")]
    [InlineData("4 März 2027", null, "bad-date")]
    [InlineData("4 March", null, "bad-date")]
    [InlineData("4 March 2027 or later", null, "bad-date")]
    [InlineData("04/03-2027", DateOrder.DayMonthYear, "bad-date")]
    [InlineData("", null, "bad-date")]
    public void Dates_are_read_as_written_and_never_guessed(string cell, DateOrder? order, string expected)
    {
        var read = Reading.Of($"Date,Amount,Text\n\"{cell}\",1.00", new SheetReading { DateOrder = order }).Value;

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
    [InlineData("$12.50", "bad-amount")]
    [InlineData("12.50 CR", "bad-amount")]
    [InlineData("1e3", "bad-amount")]
    [InlineData("1 234.50", "bad-amount")]
    [InlineData("1234567890123456789", "bad-amount")]
    [InlineData("٣", "bad-amount")]
    [InlineData("", "bad-amount")]
    [InlineData("0.00", "zero")]
    public void Amounts_are_plain_numbers_or_refused(string cell, string expected)
    {
        var read = Reading.Of($"Date,Amount,Text\n2027-03-04,\"{cell}\"").Value;

        var told = read.Refused is [var refused] ? refused.Code : Reading.Only(read).Amount.ToString("0.00", CultureInfo.InvariantCulture);
        Assert.Equal(expected, told);
    }

    [Fact]
    public void With_semicolons_the_comma_is_the_decimal_mark()
    {
        var read = Reading.Of("Date;Amount;Text\n2027-03-04;1.234,50\n2027-03-05;1,234\n2027-03-06;1.234",
            new SheetReading { Semicolon = true }).Value;

        Assert.Equal("2027-03-04 1234.50 - - \n2027-03-05 1.234 - - ", Reading.Told(read.Statements[0]));
        Assert.Equal("4 bad-amount", Reading.Refused(read));
    }

    [Theory]
    [InlineData("USD", "$12.50", "12.50 -")]
    [InlineData("USD", "-$1,234.50", "-1234.50 -")]
    [InlineData("USD", "$-12.50", "-12.50 -")]
    [InlineData("USD", "($12.50)", "-12.50 -")]
    [InlineData("USD", "US$ 12.50", "12.50 -")]
    [InlineData("EUR", "12.50 €", "12.50 -")]
    [InlineData("EUR", "12.50- €", "-12.50 -")]
    [InlineData("EUR", "12.50\u00A0EUR", "12.50 EUR")]
    [InlineData("EUR", "eur 12.50", "12.50 EUR")]
    [InlineData("EUR", "-EUR 12.50", "-12.50 EUR")]
    [InlineData("EUR", "CHF 12.50", "12.50 CHF")]
    [InlineData("CHF", "Fr 12.50", "12.50 -")]
    [InlineData("EUR", "$12.50", "bad-amount")]
    [InlineData("EUR", "€12.50€", "bad-amount")]
    [InlineData("EUR", "-€-12.50", "bad-amount")]
    [InlineData("EUR", "+€-12.50", "bad-amount")]
    [InlineData("EUR", "€", "bad-amount")]
    [InlineData("EUR", "XYZ 12.50", "bad-amount")]
    [InlineData("EUR", "12.50 EUR EUR", "bad-amount")]
    public void A_sign_means_the_currency_of_the_draft_and_a_code_means_what_it_says(string draft, string cell, string expected)
    {
        var read = Reading.Of($"Date,Amount,Text\n2027-03-04,\"{cell}\"", new SheetReading { Currency = draft }).Value;

        var told = read.Refused is [var refused] ? refused.Code
            : $"{Reading.Only(read).Amount:0.00} {Reading.Only(read).Currency ?? "-"}";
        Assert.Equal(expected, told);
    }

    [Fact]
    public void The_currency_of_a_line_decides_what_its_sign_means()
    {
        var read = Reading.Of("Date,Amount,Currency,Text\n"
            + "2027-03-04,$1.00,CAD\n2027-03-05,€1.00,CAD\n2027-03-06,CAD 1.00,CAD\n2027-03-07,USD 1.00,CAD",
            new SheetReading { Currency = "EUR" }).Value;

        Assert.Equal("2027-03-04 1.00 CAD - \n2027-03-06 1.00 CAD - ", Reading.Told(read.Statements[0]));
        Assert.Equal("3 bad-amount, 5 bad-currency", Reading.Refused(read));
    }

    [Fact]
    public void One_line_proves_the_order_of_day_and_month_for_the_whole_file()
    {
        Assert.Equal("2027-03-02, 2027-04-03, 2027-12-31", Days("02/03/2027", "03/04/2027", "31/12/2027"));
        Assert.Equal("2027-02-03, 2027-03-04, 2027-12-31", Days("02/03/2027", "03/04/2027", "12/31/2027"));
        Assert.Equal("ambiguous-date, ambiguous-date", Days("02/03/2027", "03/04/2027"));
        Assert.Equal("2027-03-02, bad-date, 2027-12-31", Days("02/03/2027", "32/13/2027", "31/12/2027"));
    }

    [Fact]
    public void A_file_with_both_orders_proves_neither()
    {
        Assert.Equal("ambiguous-date, 2027-12-31, 2027-12-30", Days("02/03/2027", "31/12/2027", "12/30/2027"));
    }

    /// <summary>
    /// 13/03/27 may be a day in 2027 or in 2013. Read with the year first, days 2 to 31 would be years 2002 to 2031: 29 years in one file.
    /// </summary>
    [Fact]
    public void Years_of_two_digits_are_settled_only_if_no_other_order_is_possible()
    {
        Assert.Equal("2027-03-02, 2027-03-13, 2027-03-31", Days("02/03/27", "13/03/27", "31/03/27"));
        Assert.Equal("2027-03-02, 2027-03-13, 2027-03-31", Days("27-03-02", "27-03-13", "27-03-31"));
        Assert.Equal("ambiguous-date, ambiguous-date", Days("13/03/27", "14/03/27"));
    }

    [Fact]
    public void An_order_that_the_caller_gives_is_not_settled_again() =>
        Assert.Equal(["bad-date", "2027-03-02"], Told(new SheetReading { DateOrder = DateOrder.DayMonthYear }, "12/31/2027", "02/03/2027"));

    private static string Days(params string[] cells) => string.Join(", ", Told(new SheetReading(), cells));

    private static IEnumerable<string> Told(SheetReading sheet, params string[] cells)
    {
        var read = Reading.Of($"Date,Amount,Text\n{string.Join('\n', cells.Select(cell => $"{cell},1.00"))}", sheet).Value;
        return read.Refused.Select(refused => (refused.Line, Told: (string)refused.Code!))
            .Concat(read.Statements[0].Transactions.Select(one => (one.Line, Told: one.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))))
            .OrderBy(line => line.Line).Select(line => line.Told);
    }
}
