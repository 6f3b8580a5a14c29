using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using Xunit;

namespace PriceFloor.Evidence.Tests.Findings;

/// <summary>What the other designs of a maker say of one of them.</summary>
public sealed class GoodPriorTests
{
    /// <summary>
    /// Eight designs with 18 good of 20 and one with 10: y0 = 154/180, N = 180. between = (160*(0.9 - 0.855556)^2 + 20*(0.5 - 0.855556)^2
    /// - 8*0.123580)/(180 - 20 - 8) = 0.012209; w = 0.123580/0.012209 - 1 = 9.1219. The bad one: a = 9.1219*0.855556 + 10, b = 9.1219*0.144444 + 10:
    /// 0.6114, where its own lots alone say 10.5/21 = 0.5. A good one: (7.8043 + 18)/29.1219 = 0.8861. Own weight 20/29.1219 = 0.6868.
    /// </summary>
    [Fact]
    public void Nine_designs_say_something_of_each_other()
    {
        var studio = Found(18, 18, 18, 18, 18, 18, 18, 18, 10);
        Assert.Equal([.. Enumerable.Repeat((0.8861m, 0.6868m), 8), (0.6114m, 0.6868m)],
            studio.Designs.Select(design => (Good(design).Estimate.Value, Good(design).OwnWeight!.Value)));
    }

    [Fact]
    public void Seven_say_nothing()
    {
        var studio = Found(18, 18, 18, 18, 18, 18, 10);
        Assert.Equal((0.5m, null), (Good(studio.Designs[^1]).Estimate.Value, Good(studio.Designs[^1]).OwnWeight));
    }

    [Fact]
    public void Designs_of_another_profile_say_nothing()
    {
        var mine = Found(18, 18, 18, 18, 18, 18, 18, 10);
        var others = Found([18, 18, 18, 18, 18, 18, 18, 10], sku => sku == "8" ? "other" : "main");
        Assert.NotNull(Good(mine.Designs[^1]).OwnWeight);
        Assert.Null(Good(others.Designs[^1]).OwnWeight);
    }

    [Fact]
    public void What_is_known_of_them_may_come_with_a_part_of_the_lines()
    {
        var all = Found(18, 18, 18, 18, 18, 18, 18, 18, 10);
        var good = GoodPriors.Of(all.Designs.Select(design => GoodLots.Of(design.Known.Stored.Design, design.Log.Bench)));
        var one = all.Designs[^1].Known;
        var alone = StudioEvidence.Of([], [.. all.Designs[^1].Log.Bench], [], null,
            new KnownStudio([one], _ => null, (_, _, _) => null, good), new EvidenceChoices { To = RiverDrop.LastDay });
        Assert.Equal(Good(all.Designs[^1]), Good(Assert.Single(alone.Designs)));
    }

    private static StudioEvidence Found(params int[] good) => Found(good, _ => "main");

    /// <summary>Each design has five loads of four; where they are not alike, they scatter no more than single pieces do.</summary>
    private static StudioEvidence Found(int[] good, Func<string, string> profile)
    {
        var skus = good.Select((_, index) => FormattableString.Invariant($"{index + 1}")).ToList();
        var bench = skus.SelectMany((sku, design) => Enumerable.Range(0, 5).Select(load => new BenchEntry
        {
            Source = "book",
            On = RiverDrop.FirstDay.AddDays(load),
            Sku = sku,
            Started = 4,
            Good = good[design] / 5 + (load < good[design] % 5 ? 1 : 0),
            Position = design * 5 + load + 1,
        }));
        var known = skus.Select(sku => new KnownDesign(sku, RiverDrop.Piece(new Design
        {
            Profile = profile(sku),
            Making = new() { MinutesPerPiece = 30 },
        })));
        return StudioEvidence.Of([], [.. bench], [], null, new KnownStudio([.. known], _ => null, (_, _, _) => null),
            new EvidenceChoices { To = RiverDrop.LastDay });
    }

    private static Finding Good(DesignEvidence design) => design.Findings.Single(finding => finding.Pointer == "/making/goodShare");
}
