using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>The formulas of the parts of a <see cref="BalancedRemedy"/>.</summary>
internal static class BalancedFormulas<T> where T : IFigure<T>
{
    /// <param name="figures">What all ways are computed from.</param>
    /// <param name="ways">The possible ones of faster work, cheaper materials and lower costs, in order.</param>
    public static IEnumerable<(RemedyKind Way, T Part, T Figure)> PartsOf(RemedyFigures figures, IReadOnlyList<RemedyKind> ways)
    {
        var (piece, year) = (figures.UnitCost, figures.Year);
        T left = T.Named("gap", figures.Gap), hours = T.Named("benchHours", piece.BenchHours), materials = T.Named("materials", piece.Materials);
        var onChannel = new ChannelFloorFormulas<T>(piece, figures.Check.Prices.Terms.Channel);
        foreach (var (i, way) in ways.Index())
        {
            var part = T.Named("part", i + 1, left / (ways.Count - i));
            left -= part;
            if (way == RemedyKind.WorkFaster)
                hours = T.Named("balancedHours", hours - part / T.Named("perBenchHour", year.PerBenchHour));
            yield return (way, part, way switch
            {
                RemedyKind.WorkFaster => hours,
                RemedyKind.CheaperMaterials => T.Named("balancedMaterials", materials - part),
                _ => T.Named("balancedCut", part * T.Named("carryingHours", year.CarryingHours)
                    / (onChannel.HasSellingHours ? hours + onChannel.SellingHours : hours)),
            });
        }
    }
}
