using PriceFloor.Statements.Tests.Files;
using Xunit;

namespace PriceFloor.Statements.Tests;

/// <summary>Money that never meets a bank.</summary>
public sealed class CashBookTests
{
    private const string Book = """
        Date,What,In,Out,To,Cost kind,Name,Business share
        2026-02-14,From the machine,60.00,,own account,,,
        2026-03-21,Spring fair,148.00,,Sale,,,
        2026-03-21,Pitch,,25.00,business,Shows and stalls,Stalls,
        2026-05-09,Pliers,,18.00,,supplies,,0.5
        2026-09-12,Eggs,,24.40,household,,Groceries,
        2026-10-01,Left to the rules,,12.00,,,,
        """;

    private static readonly ReadyRules s_rules = Bank.Rules(Bank.Rule("cash machine", Placement.Cash, paid: Paid.Out),
        Bank.Rule("cash paid in", Placement.Cash, paid: Paid.In), Bank.Rule("left to", Placement.Household) with { Name = "Rest" });

    private static StatementFile BookOf(string text = Book) => Reading.Of(text, new SheetReading { IsCashBook = true }).Value;

    private static StatementFile Current => Bank.File("current", "2026-01-01", "2026-12-31", Bank.Line("2026-02-13", -60, "Cash machine"),
        Bank.Line("2026-07-01", -40, "Cash machine"), Bank.Line("2026-08-01", 100, "Cash paid in"));

    [Fact]
    public void Its_lines_say_themselves_what_they_are_and_cover_the_year_of_the_bank()
    {
        var draft = Bank.Draft(s_rules, Current, BookOf());

        // The bank covers twelve months, and so does the book, whose lines are in five of them: nothing is multiplied.
        Assert.Equal([("Stalls", 25.00m), ("Supplies", 9.00m)], draft.Profile.Expenses.Select(line => (line.Name!, line.Amount))); // half of 18
        Assert.Equal([("Groceries", 24.40m), ("Rest", 12.00m), ("Supplies, the private part", 9.00m)],
            draft.Profile.Household.Select(line => (line.Name!, line.Amount)));
        Assert.Equal(148.00m, MoneyReceived.In(draft.Sorting).Total);
    }

    [Fact]
    public void Cash_from_the_machine_is_not_counted_again_beside_the_book()
    {
        var with = Bank.Sort(s_rules, Current, BookOf());
        Assert.Equal([LineOutcome.Paired, LineOutcome.OwnAccount, LineOutcome.OwnAccount, LineOutcome.Paired], with.Outcomes()[..4]);

        var without = Bank.Draft(s_rules, Current);
        Assert.Equal([("Cash", 100.00m)], without.Profile.Household.Select(line => (line.Name!, line.Amount))); // 60 + 40
        Assert.Equal(100.00m, MoneyReceived.In(without.Sorting).Total); // paid in without a book: takings
    }

    [Fact]
    public void Alone_it_covers_the_months_that_it_has_lines_of() =>
        Assert.Equal(9m, Assert.Single(Bank.Sort(s_rules, BookOf()).Coverage).Months); // February to October

    [Theory]
    [InlineData("x,1.00,,pocket money,,")]
    [InlineData("x,,1.00,business,glass,")]
    [InlineData("x,1.00,,sale,rent,")] // a sale has no kind of cost
    [InlineData("x,,1.00,business,rent,1.5")]
    [InlineData("x,,1.00,business,rent,half")]
    [InlineData("x,,1.00,,,0.5")] // a share of what?
    public void A_line_that_says_what_no_rule_can_say_is_refused(string line) => Assert.Equal("2 bad-place",
        Reading.Refused(BookOf($"Date,What,In,Out,To,Cost kind,Business share\n2026-03-01,{line}")));

    [Fact]
    public void A_line_that_says_what_it_is_needs_no_text()
    {
        var line = Reading.Only(BookOf("Date,Out,Cost kind\n2026-03-01,9.00,supplies"));

        Assert.Equal((-9m, CostKind.Supplies), (line.Amount, line.Says!.CostKind));
        Reading.FailsWith("missing-column", Reading.Of("Date,Out,Business share\n2026-03-01,9.00,0.5", new SheetReading { IsCashBook = true }));
    }

    [Fact]
    public void Other_sheets_cannot_say_it()
    {
        var line = Reading.Only(Reading.Of("Date,Text,Amount,To\n2026-03-01,a,-1.00,household").Value);

        Assert.Null(line.Says);
    }

    [Fact]
    public void With_semicolons_a_share_has_a_comma()
    {
        var book = Reading.Of("Date;What;Out;To;Business share;Name\n2026-03-01;Phone;10,00;business;0,25;Phone",
            new SheetReading { IsCashBook = true, Semicolon = true }).Value;

        Assert.Equal((0.25m, "Phone", "Phone"), (Reading.Only(book).Says!.BusinessShare, Reading.Only(book).Says!.Name, Reading.Only(book).Text));
    }
}
