using Xunit;

namespace PriceFloor.Statements.Tests;

public sealed class ReadyRulesTests
{
    [Fact]
    public void The_first_matching_rule_wins()
    {
        var rules = Bank.Rules(Bank.Rule("glass depot returns", Placement.LeaveOut),
            Bank.Rule("glass depot", Placement.Business, CostKind.Materials));

        Assert.Equal(1, rules.FirstFor(Bank.Line("2026-01-05", -80, "GLASS DEPOT 0042"), Bank.Time));
        Assert.Equal(0, rules.FirstFor(Bank.Line("2026-01-05", 12, "Glass Depot Returns"), Bank.Time));
        Assert.Null(rules.FirstFor(Bank.Line("2026-01-05", -80, "Harbour bakery"), Bank.Time));
    }

    [Theory]
    [InlineData(-99.99, false)]
    [InlineData(-100, true)]
    [InlineData(-250, true)]
    [InlineData(-250.01, false)]
    [InlineData(150, false)]
    public void Amounts_lie_between_least_and_most_whichever_way_they_go(double amount, bool taken)
    {
        var rules = Bank.Rules(new ReadingRule { Paid = Paid.Out, Least = 100, Most = 250, To = Placement.Household });

        Assert.Equal(taken, rules.FirstFor(Bank.Line("2026-01-05", (decimal)amount, "anything"), Bank.Time) is not null);
    }

    [Fact]
    public void A_pattern_matches_in_any_case()
    {
        var rules = Bank.Rules(new ReadingRule { TextMatches = @"\b(rod|frit)s? order \d+", To = Placement.Business });

        Assert.Equal(0, rules.FirstFor(Bank.Line("2026-01-05", -80, "FRIT ORDER 4471"), Bank.Time));
        Assert.Null(rules.FirstFor(Bank.Line("2026-01-05", -80, "FRIT ORDER"), Bank.Time));
    }

    [Theory]
    [InlineData(@"(?=rent)rent")]
    [InlineData(@"(a)\1")]
    [InlineData(@"(?>a+)b")]
    [InlineData(@"((a{1000}){1000}){1000}")]
    [InlineData(@"(unclosed")]
    [InlineData(@"[z-a]")]
    public void A_pattern_that_cannot_be_run_in_bounded_time_is_refused(string pattern)
    {
        var fault = Assert.Single(ReadyRules.FaultsOf(new ReadingRules
        {
            Rules = [Bank.Rule("rent", Placement.Business), new ReadingRule { TextMatches = pattern, To = Placement.Business }],
        }));

        Assert.Equal(("/rules/1/textMatches", "bad-pattern"), (fault.Pointer, fault.Code));
    }

    [Fact]
    public async Task A_pattern_that_would_be_catastrophic_by_backtracking_answers_at_once()
    {
        var rules = Bank.Rules(new ReadingRule { TextMatches = "(a+)+$", To = Placement.Business },
            new ReadingRule { TextMatches = "(.*)*(.*)*(.*)*x$", To = Placement.Business });
        var line = Bank.Line("2026-01-05", -80, new string('a', 499) + "!");

        // By backtracking 2^499 steps; here a hang, not a slow machine, is what fails.
        var answer = await Task.Run(() => rules.FirstFor(line, Bank.Time), TestContext.Current.CancellationToken)
            .WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);

        Assert.Null(answer);
    }
}
