using Xunit;

namespace PriceFloor.Statements.Tests.Files;

/// <summary>Rows that are no transactions: totals and balances.</summary>
public sealed class SheetTotalTests
{
    [Theory]
    [InlineData("Total,,30.00")]
    [InlineData(",Total:,30.00")]
    [InlineData("Total for March,,30.00")]
    [InlineData(",Summe,30.00")]
    [InlineData(",Closing balance,1030.00")]
    [InlineData("2027-03-31,Total,30.00")] // 10 + 20
    [InlineData("2027-03-31,Opening balance,1000.00")]
    public void A_row_of_totals_is_no_transaction(string row)
    {
        var read = Reading.Of($"Date,Text,Amount\n2027-03-04,a,10.00\n2027-03-05,b,20.00\n{row}").Value;

        Assert.Equal("4 total", Reading.Refused(read));
        Assert.Equal(30m, read.Statements[0].Transactions.Sum(one => one.Amount));
        Assert.Empty(read.WhollyFailed);
    }

    [Theory]
    [InlineData("2027-03-31,Total,-47.00")] // a filling station
    [InlineData("2027-03-31,Total 4711,30.00")]
    [InlineData("2027-03-31,Balance bikes,30.00")]
    public void A_payee_of_that_name_is_a_payee(string row) =>
        Assert.Equal(3, Reading.Of($"Date,Text,Amount\n2027-03-04,a,10.00\n2027-03-05,b,20.00\n{row}").Value.Statements[0].Transactions.Count);

    [Fact]
    public void The_first_line_is_no_total_of_nothing() =>
        Assert.Equal(-1m, Reading.Only(Reading.Of("Date,Text,Amount\n2027-03-04,Total,-1.00").Value).Amount);

    [Fact]
    public void A_total_of_both_columns_is_one()
    {
        var read = Reading.Of("Date,Text,Paid out,Paid in\n2027-03-04,a,10.00,\n"
            + "2027-03-05,b,,20.00\n2027-03-31,Totals,10.00,20.00\n,,10.00,20.00").Value;

        Assert.Equal("4 total, 5 bad-date", Reading.Refused(read));
    }
}
