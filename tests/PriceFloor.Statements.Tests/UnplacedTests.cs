using Xunit;

namespace PriceFloor.Statements.Tests;

/// <summary>Lines that no rule places.</summary>
public sealed class UnplacedTests
{
    [Fact]
    public void Unplaced_lines_come_largest_first_alike_ones_together_with_what_similar_ones_are()
    {
        var rules = Bank.Rules(Bank.Rule("torchworks supply order", Placement.Business, CostKind.Materials));
        var sorting = Bank.Sort(rules, Bank.File("current", null, null,
            Bank.Line("2026-01-03", -120, "TORCHWORKS SUPPLY ORDER 881"), Bank.Line("2026-02-03", -75, "Torchworks invoice 17"),
            Bank.Line("2026-03-03", -25, "Torchworks invoice 19"), Bank.Line("2026-03-04", -400, "Harbour dental")));
        var unplaced = Unplaced.In(sorting);

        Assert.Equal([("Harbour dental", 400m, 1), ("Torchworks invoice 19", 100m, 2)],
            unplaced.Select(group => (group.Text, group.Total, group.Entries.Count)));
        Assert.Null(unplaced[0].Suggested);
        Assert.Equal((CostKind.Materials, "TORCHWORKS"), (unplaced[1].Suggested!.CostKind, unplaced[1].Because));
    }
}
