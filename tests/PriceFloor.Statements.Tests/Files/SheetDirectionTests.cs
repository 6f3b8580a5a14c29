using Xunit;

namespace PriceFloor.Statements.Tests.Files;

/// <summary>Which way the money went, if no sign says so.</summary>
public sealed class SheetDirectionTests
{
    private const string Unsigned = "Date,Amount,Debit/Credit,Text\n2027-03-04,40.00,D\n2027-03-05,2.00,C";

    [Fact]
    public void Amounts_whose_direction_is_in_another_column_are_not_all_read_as_income()
    {
        Reading.FailsWith("unsigned-amount", Reading.Of(Unsigned));
        Reading.FailsWith("unsigned-amount", Reading.Of(Unsigned, new SheetReading { AmountColumn = "amount" }));
        Reading.FailsWith("unsigned-amount",
            Reading.Of("Date,Amount,Direction,Text\n2027-03-04,40.00,weg", new SheetReading { AmountColumn = "Amount" }));
    }

    [Theory]
    [InlineData("2027-03-04,-40.00,D\n2027-03-05,2.00,C", "-40.00 2.00")]
    [InlineData("2027-03-04,40.00,C\n2027-03-05,2.00,C", "40.00 2.00")] // all of it says that it came in
    [InlineData("2027-03-04,-40.00,weg\n2027-03-05,2.00,her", "-40.00 2.00")] // words that nobody knows, but signs
    [InlineData("2027-03-04,-40.00,D\n2027-03-05,2.00,D", "unsigned-amount")] // one line shows that the signs are not the direction
    public void Amounts_with_signs_are_read_beside_a_direction_that_they_follow(string lines, string expected)
    {
        var read = Reading.Of("Date,Amount,Debit/Credit,Text\n" + lines, new SheetReading { AmountColumn = "Amount" });

        Assert.Equal(expected, read.Found is { } file ? Amounts(file) : (string)Assert.Single(read.Faults).Code!);
    }

    [Theory]
    [InlineData("D", "C")]
    [InlineData("debit", "credit")]
    [InlineData("DBIT", "CRDT")]
    [InlineData("DR", "CR")]
    [InlineData("Money out", "Money in")]
    [InlineData("-", "+")]
    [InlineData("Soll", "Haben")]
    [InlineData("Af", "Bij")]
    [InlineData("débit", "crédit")]
    public void A_column_of_any_name_may_say_the_direction(string isOut, string isIn)
    {
        var read = Reading.Of($"Date,Amount,Kind of booking,Text\n2027-03-04,40.00,{isOut}\n2027-03-05,2.00,{isIn}\n2027-03-06,-7.00,{isOut}\n"
            + $"2027-03-07,-1.00,{isIn}\n2027-03-08,3.00,\n2027-03-09,3.00,sideways", new SheetReading { DirectionColumn = "kind of booking" }).Value;

        Assert.Equal("-40.00 2.00 -7.00", Amounts(read));
        Assert.Equal("5 bad-direction, 6 bad-direction, 7 bad-direction", Reading.Refused(read));
    }

    [Fact]
    public void A_sheet_without_the_column_of_the_direction_is_a_fault()
    {
        var missing = Assert.Single(Reading.Of("Date,Amount,Text\n2027-03-04,1.00", new SheetReading { DirectionColumn = "Way" }).Faults);

        Assert.Equal(("missing-column", true), (missing.Code, missing.Detail.Contains("?directionColumn=", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_card_may_count_its_purchases_as_positive() => Assert.Equal("-40.00 650.00",
        Amounts(Reading.Of("Date,Amount,Text\n2027-03-04,40.00\n2027-03-28,-650.00", new SheetReading { PositiveIsOut = true }).Value));

    [Fact]
    public void A_layout_counts_field_by_field_and_its_money_columns_together()
    {
        var card = new StatementLayout { DateColumn = "Booked", AmountColumn = "Value", PositiveIsOut = true };
        var columns = new StatementLayout { DateColumn = "When", InColumn = "In", OutColumn = "Out", TextColumn = "Words" };
        var query = columns with { Dialect = StatementDialect.Semicolon };

        Assert.Equal(card with { TextColumn = "Words", Dialect = StatementDialect.Semicolon }, card.Over(query));
        Assert.Equal(query with { Name = "Mine" }, new StatementLayout { Name = "Mine" }.Over(query));
        Assert.Equal(query, query.Over(card));
    }

    private static string Amounts(StatementFile file) =>
        string.Join(' ', file.Statements[0].Transactions.Select(one => $"{one.Amount:0.00}"));
}
