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

    /// <summary>Shops of one town: its name follows each of theirs, and says nothing about any.</summary>
    [Fact]
    public void A_town_of_many_shops_suggests_nothing_and_is_in_no_rule()
    {
        var rules = Bank.Rules(Bank.Rule("grocery", Placement.Household));
        var sorting = Bank.Sort(rules, Bank.File("current", null, null,
            Bank.Line("2026-01-03", -30, "CARD LARK GROCERY THORNBECK"), Bank.Line("2026-01-04", -40, "CARD FINCH GROCERY THORNBECK"),
            Bank.Line("2026-01-05", -50, "CARD KILNS AND SONS THORNBECK 0117"), Bank.Line("2026-02-05", -60, "CARD KILNS AND SONS THORNBECK 0218"),
            Bank.Line("2026-01-06", -7, "CARD HERON CYCLES THORNBECK"), Bank.Line("2026-01-07", -5, "CARD HERON CYCLES ELMFORD")));
        var unplaced = Unplaced.In(sorting);

        // Without the town the rule would take what is paid to the cycle shop in another town too, so that one keeps it.
        Assert.Equal([("CARD KILNS AND SONS THORNBECK", "CARD KILNS AND SONS"), ("CARD HERON CYCLES THORNBECK", "CARD HERON CYCLES THORNBECK"),
            ("CARD HERON CYCLES ELMFORD", "CARD HERON CYCLES ELMFORD")], unplaced.Select(group => (group.Common!, group.Has!)));
        Assert.All(unplaced, group => Assert.True(group.Suggested is null, $"{group.Text}: {group.Because}"));
    }

    [Fact]
    public void A_town_that_only_two_payees_share_suggests_nothing_either()
    {
        var sorting = Bank.Sort(Bank.Rules(Bank.Rule("grocery", Placement.Household)), Bank.File("current", null, null,
            Bank.Line("2026-01-03", -30, "Lark grocery Thornbeck"), Bank.Line("2026-01-05", -50, "Kilns and sons Thornbeck")));

        Assert.Null(Assert.Single(Unplaced.In(sorting)).Suggested);
    }

    [Fact]
    public void What_is_left_of_a_rule_never_takes_the_lines_of_somebody_else()
    {
        // "order" follows three different words, but without it the rule would be "card", which takes every line.
        var sorting = Bank.Sort(Bank.Rules(), Bank.File("current", null, null, Bank.Line("2026-01-01", -4, "Card order"),
            Bank.Line("2026-01-02", -3, "Card glass order"), Bank.Line("2026-01-03", -2, "Card wine order")));

        Assert.Equal(["Card order", "Card glass", "Card wine"], Unplaced.In(sorting).Select(group => group.Has));
    }
}
