using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests;

/// <summary>The worked example from lines to the floor as found; its figures were computed twice.</summary>
public sealed class RiverDropTests
{
    private static readonly Currency s_money = Currency.Of("USD");

    private readonly StudioEvidence _studio = RiverDrop.Found();

    private DesignEvidence Design => Assert.Single(_studio.Designs);

    [Fact]
    public void Three_guesses_were_too_good()
    {
        Assert.Equal(
            [
                "/making/steps 48.20 (47.67 to 48.73), stored 38.00: StoredTooLow, by 12 bench-log entries",
                "/making/steps/1/goodShare 0.8695 (0.7971 to 0.9295), stored 0.95: StoredTooHigh, by 144 pieces started worth 67",
                "/soldShare 0.8610 (0.7895 to 0.9177), stored 1: StoredTooHigh, by 126 pieces made",
            ],
            Design.Findings.Select(Told));
    }

    [Fact]
    public void Each_of_them_moves_the_floor_and_all_three_make_it_56_31()
    {
        Assert.Equal([44.37m, 39.68m, 42.18m], Enumerable.Range(0, 3).Select(index => s_money.RoundUp(Design.FloorWith(index)!.Value)));
        Assert.Equal(36.32m, s_money.RoundUp(Design.Known.Stored.Floor));
        // (45 * 48.20/60 + 6)/(0.8695 * 0.8610) = 42.15/0.7486395 = 56.3021.
        Assert.Equal(56.31m, s_money.RoundUp(Design.AsFound.Value.Floor));
        Assert.Equal([40.20m, 8m], Design.Draft.Making.Steps!.Select(step => step.HandsOnMinutes));
    }

    [Fact]
    public void An_hour_earned_37_31_instead_of_62_60()
    {
        // 52.00 leaves 0.971 * 52 - 2.445 = 48.047; 90 of them 4324.23. M = 6/0.7486395 = 8.0145, t = 48.20/60/0.7486395 = 1.07306.
        var (take, found) = (Design.Take!, Design.AsFound.Value);
        Assert.Equal((90, 4324.23m), (take.Pieces, take.Net));
        Assert.Equal(3602.92m, s_money.Round(take.Contribution(found)));
        Assert.Equal((37.31m, 62.60m), (s_money.Round(take.Earned(found)!.Value), s_money.Round(take.Earned(Design.Known.Stored)!.Value)));
        var (low, high) = Design.Minutes!.Value;
        Assert.Equal((36.90m, 37.72m), (s_money.Round(take.Earned(Design.Taking(high)!)!.Value),
            s_money.Round(take.Earned(Design.Taking(low)!)!.Value)));
    }

    [Fact]
    public void What_learning_has_cost_and_how_fast_it_sells()
    {
        var learning = Design.Learning!;
        Assert.Equal((77.91m, 48.20m, 47.37m), (learning.First, learning.Today.Value, learning.MeanOfNext(60)));
        Assert.Equal(526.83m, s_money.Round(learning.ExtraMinutes * 45 / 60));
        Assert.Equal((83, 31), (Design.DaysToSell, Design.Shelf.OnHand));
        Assert.Equal(0.7143m, Rounding.Nearest(Design.SellThrough!.Value, 4)); // 90/126
    }

    [Fact]
    public void Two_things_are_warned_of()
    {
        Assert.Equal(["fails-in-lots /findings/1", "young-stock /findings/2"],
            EvidenceWarnings.In(Design, _studio.Choices).Select(warning => $"{warning.Code} {warning.Pointer}"));
    }

    [Fact]
    public void The_channel_is_as_it_was_thought()
    {
        var channel = Assert.Single(_studio.Channels);
        // Only sales that were 45 days old on the last day count for returns.
        var old = RiverDrop.Movements.Count(line => line.What == MovementKind.Sold && line.On <= RiverDrop.LastDay.AddDays(-45));
        Assert.Equal(["/piecesPerOrder 1 of 90 orders", $"/returns/share 0 of {old} pieces sold", "/usualDiscount 0 of 90 orders"],
            channel.Findings.Select(found =>
                FormattableString.Invariant($"{found.Pointer} {found.Estimate.Low:0.####} of {found.Observations} {found.Of}")));
        Assert.All(channel.Findings, found => Assert.Equal(Says.Agrees, found.Says));
        // None of them came back: (1/2 + 0)/(n + 1).
        Assert.Equal(Rounding.Nearest(0.5m / (old + 1), 4), channel.Findings[1].Estimate.Value);
    }

    [Fact]
    public void The_draft_once_stored_agrees_and_changes_no_interval()
    {
        var again = Assert.Single(RiverDrop.Found(design: Design.Draft).Designs);
        Assert.All(again.Findings, finding => Assert.Equal(Says.Agrees, finding.Says));
        Assert.Equal(Design.Findings.Select(finding => finding.Estimate), again.Findings.Select(finding => finding.Estimate));
        Assert.Equal(Design.AsFound.Value.Floor, again.Known.Stored.Floor);
    }

    [Fact]
    public void The_order_of_lines_does_not_matter()
    {
        var shuffled = RiverDrop.Found([.. RiverDrop.Movements.Reverse()], [.. RiverDrop.Bench.Reverse()]);
        Assert.Equal(Design.Findings.Select(Told), Assert.Single(shuffled.Designs).Findings.Select(Told));
        Assert.Equal(Design.Take, shuffled.Designs[0].Take);
    }

    [Fact]
    public void Prices_times_ten_bring_ten_times_the_take_and_change_no_share()
    {
        var dear = Assert.Single(RiverDrop.Found([.. RiverDrop.Movements.Select(line => line with { Paid = line.Paid * 10,
            Listed = line.Listed * 10 })]).Designs);
        // Of 520.00: 0.971 * 520 - 2.445 = 502.475 each.
        Assert.Equal(90 * 502.475m, dear.Take!.Net);
        Assert.Equal(Design.Findings.Select(Told), dear.Findings.Select(Told));
    }

    [Fact]
    public void With_four_loads_nothing_of_the_bench_is_drafted()
    {
        var few = Assert.Single(RiverDrop.Found(bench: [.. RiverDrop.Bench.Take(4)]).Designs);
        Assert.Equal([Says.TooFew, Says.TooFew, Says.StoredTooHigh], few.Findings.Select(finding => finding.Says));
        Assert.Equal(RiverDrop.Design.Making.Steps, few.Draft.Making.Steps);
        Assert.Equal(LearningFit.Absence.TooFewEntries, few.NoLearning);
    }

    private static string Told(Finding finding) => FormattableString.Invariant(
        $"{finding.Pointer} {finding.Estimate.Value} ({finding.Estimate.Low} to {finding.Estimate.High}), stored {finding.Stored}: {finding.Says}, ")
        + FormattableString.Invariant($"by {finding.Observations} {finding.Of}") + (finding.Worth is { } worth
            ? FormattableString.Invariant($" worth {worth}") : "");
}
