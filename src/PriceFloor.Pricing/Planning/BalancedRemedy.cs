using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// The gap spread over faster work, cheaper materials and lower costs, as far as each is possible: each closes an even part of what
/// those before it left, and all are rounded last.
/// </summary>
public sealed class BalancedRemedy
{
    private BalancedRemedy(RemedyFigures figures, IReadOnlyList<BalancedPart> parts)
    {
        var (piece, year) = (figures.UnitCost, figures.Year);
        Parts = parts;
        Cut = FigureOf(RemedyKind.SpendLess) is { } cut ? year.Currency.RoundUp(cut) : null;
        BenchMinutes = FigureOf(RemedyKind.WorkFaster) is { } hours ? Rounding.Down(hours * 60, RemedyCase.MinuteDecimals) : null;
        Materials = FigureOf(RemedyKind.CheaperMaterials) is { } materials ? year.Currency.RoundDown(materials) : null;
        CarriesItsShare = figures.Amount.Reaches((year.BenchMustEarn - (Cut ?? 0)) / year.CarryingHours
            * ((BenchMinutes / 60 ?? piece.BenchHours) + figures.SellingHours) + (Materials ?? piece.Materials) - piece.SecondsCredit);

        decimal? FigureOf(RemedyKind way) => parts.FirstOrDefault(part => part.Way == way)?.Figure;
    }

    /// <summary>In order; empty if the price carries its share already.</summary>
    public IReadOnlyList<BalancedPart> Parts { get; }

    /// <summary>Bench minutes a sold piece, rounded down; null if they stay as they are.</summary>
    public decimal? BenchMinutes { get; }

    /// <summary>Materials a sold piece, rounded down; null if they stay as they are.</summary>
    public decimal? Materials { get; }

    /// <summary>Less for bench time to recover in the year, rounded up; null if the year's costs stay as they are.</summary>
    public decimal? Cut { get; }

    /// <summary>All three together, checked like any other price.</summary>
    public bool CarriesItsShare { get; }

    /// <param name="figures">What all ways are computed from.</param>
    /// <param name="ways">The possible ones of the three, in order.</param>
    internal static BalancedRemedy? Of(RemedyFigures figures, IReadOnlyList<RemedyKind> ways) =>
        ways.Count == 0 ? null : new BalancedRemedy(figures, figures.Gap == 0 ? []
            : [.. BalancedFormulas<Figure>.PartsOf(figures, ways).Select(one => new BalancedPart(one.Way, one.Part.Value, one.Figure.Value))]);
}

/// <summary>One way's part of the gap, and the figure that closes it; both unrounded.</summary>
/// <param name="Way">Faster work, cheaper materials or lower costs.</param>
/// <param name="Part">What it closes of the gap.</param>
/// <param name="Figure">Bench hours a sold piece, materials a sold piece, or the cut a year.</param>
public sealed record BalancedPart(RemedyKind Way, decimal Part, decimal Figure);
