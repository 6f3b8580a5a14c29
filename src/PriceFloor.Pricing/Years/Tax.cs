using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>
/// The tax on a year's profit, and the profit that leaves enough after it. A calculator for the tables it is given, not tax advice.
/// Tax is piecewise linear in the profit, so the inverse is found exactly: by walking the linear pieces and solving in the right one.
/// </summary>
public sealed class Tax
{
    private readonly List<TaxPiece> _pieces;

    private Tax(IReadOnlyList<Levy> levies, List<TaxPiece> pieces) => (Levies, _pieces) = (levies, pieces);

    /// <summary>The rules as levies: a flat rate is one levy with one band.</summary>
    public IReadOnlyList<Levy> Levies { get; }

    /// <summary>Refused with <c>marginal-rate</c> if one more unit of profit would leave nothing.</summary>
    public static Outcome<Tax> Of(TaxRules rules) => Outcome<Tax>.Guard(() =>
    {
        var levies = LeviesOf(rules);
        var pieces = Pieces(levies);
        var taken = pieces.FirstOrDefault(piece => !(piece.KeptOfOneMore > 0));
        return taken is null
            ? new Tax(levies, pieces)
            : new Fault(rules.Kind == TaxKind.Flat ? "/tax/rate" : "/tax/levies", FaultCodes.MarginalRate,
                $"From a profit of {Rounding.Nearest(taken.From, 2)} on, "
                + $"the rates add up to {Rounding.Nearest(100 * (1 - taken.KeptOfOneMore), 2)} % "
                + "of each further unit, so no profit could ever leave more; lower the rates so that together they stay below 100 %.");
    });

    /// <summary>
    /// The tax on a profit of at least zero, unrounded. With one levy of 10 % to 10,000 and 20 % above, a profit of 15,000 pays
    /// 1,000 + 1,000 = 2,000.
    /// </summary>
    public decimal On(decimal profit) => new TaxFormulas<Figure>(Levies, profit).Total.Value;

    /// <summary>Each levy on a profit, in order.</summary>
    public IReadOnlyList<decimal> LeviesOn(decimal profit) => Array.ConvertAll(new TaxFormulas<Figure>(Levies, profit).Levies, levy => levy.Value);

    /// <summary>The smallest profit, at least zero, that leaves <paramref name="need"/> after tax. At a flat 20 %, 8,000 needs 10,000.</summary>
    public decimal ProfitLeaving(decimal need) => Leaving<Figure>(need).Profit.Value;

    /// <summary>The same as formulas; a need below zero needs no profit.</summary>
    internal ProfitFormulas<T> Leaving<T>(T need) where T : IFigure<T> => new(Levies, PieceLeaving(need.Value), need.Value < 0 ? 0 : need);

    /// <summary>The number of a linear piece, 1 first, and how many there are.</summary>
    internal (int Number, int Count) PlaceOf(TaxPiece piece) => (_pieces.IndexOf(piece) + 1, _pieces.Count);

    /// <summary>The linear piece in which the profit that leaves <paramref name="need"/> lies.</summary>
    private TaxPiece PieceLeaving(decimal need) => _pieces.LastOrDefault(piece => piece.Kept < need) ?? _pieces[0];

    private static IReadOnlyList<Levy> LeviesOf(TaxRules rules) => rules.Kind switch
    {
        TaxKind.Flat => [new Levy { Name = "flat rate", Bands = [new Band { Rate = rules.Rate ?? 0 }] }],
        TaxKind.Levies => rules.Levies,
        _ => [],
    };

    private static List<TaxPiece> Pieces(IReadOnlyList<Levy> levies)
    {
        List<TaxPiece> pieces = [new(0, [], [], [])];
        for (var i = 0; i < levies.Count; i++)
        {
            var (before, levy) = (pieces, i);
            pieces = [.. before.SelectMany((piece, k) => WithLevy(piece, k + 1 < before.Count ? before[k + 1].From : null, levies, levy))];
        }

        return pieces;
    }

    /// <summary>Adds one levy to a piece, which splits where the levy's base crosses zero or a band's limit.</summary>
    private static IEnumerable<TaxPiece> WithLevy(TaxPiece piece, decimal? end, IReadOnlyList<Levy> levies, int number)
    {
        var levy = levies[number];
        var deducted = piece.Paid.Select((paid, j) => levies[j].DeductibleShare * paid).Sum();
        var atStart = levy.Share * piece.From + levy.OtherBase - levy.Allowance - deducted;
        var paidOfOneMore = ProfitFormulas<Figure>.OfOneMore(levies, piece.Rates);
        var perUnit = ProfitFormulas<Figure>.BaseOfOneMore(levies, number, paidOfOneMore).Value;

        var limits = levy.Bands.Where(band => band.UpTo is not null).Select(band => band.UpTo!.Value).Prepend(0);
        List<(decimal From, decimal Base)> cuts = [(piece.From, atStart)];
        if (perUnit != 0)
            cuts.AddRange(limits
                .Select(limit => (From: piece.From + (limit - atStart) / perUnit, Base: limit))
                .Where(cut => cut.From > piece.From && (end is null || cut.From < end))
                .OrderBy(cut => cut.From));

        for (var k = 0; k < cuts.Count; k++)
        {
            var (from, charged) = cuts[k];
            var inside = k + 1 < cuts.Count ? (charged + cuts[k + 1].Base) / 2
                : end is null ? charged + perUnit
                : (charged + atStart + perUnit * (end.Value - piece.From)) / 2;
            var (step, rate) = (from - piece.From, RateAt(levy, inside));
            yield return new TaxPiece(from,
                [.. piece.Paid.Zip(piece.PaidOfOneMore, (paid, more) => paid + more * step),
                    TaxFormulas<Figure>.Paid(levy, decimal.Max(0, charged)).Value],
                [.. piece.Rates, rate], [.. piece.PaidOfOneMore, rate * perUnit]);
        }
    }

    private static decimal RateAt(Levy levy, decimal charged) =>
        charged <= 0 ? 0 : levy.Bands.First(band => band.UpTo is null || charged <= band.UpTo).Rate;
}
