using Xunit;

namespace PriceFloor.Statements.Tests.Files;

/// <summary>In every format that a bank offers, the maker's year is the same.</summary>
public sealed class SameYearTests
{
    public static TheoryData<string> Formats => ["csv", "csv-semicolon", "ofx-sgml", "ofx-xml", "camt-053"];

    private static Outcome<StatementFile> Read(string format) => format switch
    {
        "csv" => Reading.Of(StudioYear.Sheet(semicolon: false)),
        "csv-semicolon" => Reading.Of(StudioYear.Sheet(semicolon: true), new SheetReading { Semicolon = true }),
        "ofx-sgml" => Reading.Of(StudioYear.OfxSgml()),
        "ofx-xml" => Reading.Of(StudioYear.OfxXml()),
        _ => Reading.Of(StudioYear.Camt()),
    };

    [Theory]
    [MemberData(nameof(Formats))]
    public void The_same_year_is_read_from_every_format(string format)
    {
        var read = Read(format).Value;

        Assert.Empty(read.Refused);
        Assert.Equal([StudioYear.Current, StudioYear.Savings, StudioYear.Card], read.Statements.Select(one => one.Account));
        Assert.Equal(
            StudioYear.Transactions.Select(one => $"{one.Account} {Reading.Told(one.Transaction)}"),
            read.Statements.SelectMany(statement => statement.Transactions.Select(one => $"{statement.Account} {Reading.Told(one)}")));
    }

    /// <summary>
    /// By hand: months add 1 + ... + 12 = 78 to every amount, away from zero.
    /// Current: 12 x (412.50 - 88.10 + 59.90 - 350 - 17.35) = 12 x 16.95 = 203.40; 78 x (2 - 3) = -78: 125.40.
    /// Savings: 12 x 151.07 = 1812.84; 78 x 2 = 156: 1968.84.
    /// Card: 12 x (-1240.99 + 310.25 - 6.75) = 12 x -937.49 = -11249.88; 78 x (1 - 2) = -78: -11327.88.
    /// </summary>
    [Theory]
    [MemberData(nameof(Formats))]
    public void The_year_adds_up_as_worked_out_by_hand(string format) =>
        Assert.Equal([125.40m, 1968.84m, -11327.88m],
            Read(format).Value.Statements.Select(one => one.Transactions.Sum(transaction => transaction.Amount)));

    [Theory]
    [InlineData("ofx-sgml")]
    [InlineData("ofx-xml")]
    [InlineData("camt-053")]
    public void The_days_covered_are_those_the_file_says(string format) =>
        Assert.All(Read(format).Value.Statements, one => Assert.Equal((new DateOnly(2027, 1, 1), new DateOnly(2027, 12, 31)), (one.From, one.To)));
}
