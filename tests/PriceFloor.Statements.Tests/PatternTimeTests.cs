using Xunit;

namespace PriceFloor.Statements.Tests;

/// <summary>All patterns of a request share five seconds; a request that exceeds them is told which rule to fix.</summary>
public sealed class PatternTimeTests
{
    private static readonly ReadyRules s_rules = Bank.Rules(
        new ReadingRule { TextMatches = "shop payout", Paid = Paid.In, To = Placement.Sale },
        new ReadingRule { TextMatches = "(rod|frit) order", Paid = Paid.Out, To = Placement.Business },
        new ReadingRule { TextHas = "rent", To = Placement.Household });

    /// <summary>Each reading of the clock is a second later: one reading before a match and one after it make each match a second long.</summary>
    [Fact]
    public void The_patterns_of_all_lines_together_get_five_seconds()
    {
        Assert.Equal(Enumerable.Repeat(LineOutcome.Placed, 5), Sort(5, 0).Outcomes()); // the fifth begins at 4 seconds and ends at 5
        var fault = Assert.Throws<SlowPatternException>(() => Sort(6, 0));
        Assert.Equal(1, fault.Rule);
        Assert.Contains("5 seconds", fault.Message, StringComparison.Ordinal);
        Assert.Contains("#/rules/1/textMatches", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_rule_that_took_most_of_it_is_named_not_the_one_that_came_last()
    {
        Assert.Equal(0, Assert.Throws<SlowPatternException>(() => Sort(2, 4)).Rule);
        Assert.Equal(1, Assert.Throws<SlowPatternException>(() => Sort(4, 2)).Rule);
    }

    [Fact]
    public void Rules_of_words_take_nothing_of_it()
    {
        var time = new PatternTime(() => throw new InvalidOperationException("nobody looks"));
        Assert.Equal(0, Bank.Rules(Bank.Rule("rent", Placement.Household)).FirstFor(Bank.Line("2026-01-05", -80, "Home rent"), time));
    }

    [Fact]
    public void One_match_that_takes_too_long_names_its_rule()
    {
        var rules = Bank.Rules(Bank.Rule("rent", Placement.Household), new ReadingRule { TextMatches = "(a?){500}a{500}", To = Placement.Household });
        Assert.Equal(1,
            Assert.Throws<SlowPatternException>(() => rules.FirstFor(Bank.Line("2026-01-05", -80, new string('a', 499) + "!"), Bank.Time)).Rule);
    }

    private static Sorting Sort(int paidOut, int paidIn)
    {
        var now = 0L;
        Transaction[] all = [.. Enumerable.Range(1, paidIn).Select(day => Bank.Line($"2026-01-0{day}", 80, "Shop payout")),
            .. Enumerable.Range(1, paidOut).Select(day => Bank.Line($"2026-01-0{day}", -80, "Frit order"))];
        return Sorting.Sort([Bank.File("current", null, null, all)], s_rules, Bank.Usd, null, new PatternTime(() => 1000 * now++),
            CancellationToken.None);
    }
}
