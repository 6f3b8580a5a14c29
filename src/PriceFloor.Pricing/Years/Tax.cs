using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Years;

/// <summary>
/// The tax on a year's profit, and the profit that leaves enough after it. A calculator for the tables it is given, not tax advice.
/// Tax is piecewise linear in the profit, so the inverse is found exactly: by walking the linear pieces and solving in the right one.
/// </summary>
public sealed class Tax
{
    private readonly TaxRules _rules;
    private readonly List<Piece> _pieces;

    private Tax(TaxRules rules, List<Piece> pieces) => (_rules, _pieces) = (rules, pieces);

    /// <summary>Refused with <c>marginal-rate</c> where one more unit of profit would leave nothing.</summary>
    public static Outcome<Tax> Of(TaxRules rules) => Outcome<Tax>.Guard(() =>
    {
        var pieces = Pieces(Levies(rules));
        var taken = pieces.FirstOrDefault(piece => !(piece.KeptOfOneMore > 0));
        return taken is null
            ? new Tax(rules, pieces)
            : new Fault(rules.Kind == TaxKind.Flat ? "/tax/rate" : "/tax/levies", FaultCodes.MarginalRate,
                $"From a profit of {Rounding.Nearest(taken.From, 2)} on, the rates add up to {Rounding.Nearest(100 * (1 - taken.KeptOfOneMore), 2)} % "
                + "of each further unit, so no profit could ever leave more; lower the rates so that together they stay below 100 %.");
    });

    /// <summary>
    /// The tax on a profit of at least zero, unrounded. With one levy of 10 % to 10,000 and 20 % above, a profit of 15,000 pays
    /// 1,000 + 1,000 = 2,000.
    /// </summary>
    public decimal On(decimal profit) => LeviesOn(profit).Sum();

    /// <summary>Each levy on a profit, in order.</summary>
    public IReadOnlyList<decimal> LeviesOn(decimal profit)
    {
        var paid = new List<decimal>();
        foreach (var levy in Levies(_rules))
        {
            var charged = decimal.Max(0, levy.Share * profit + levy.OtherBase - levy.Allowance - Deductions(paid));
            paid.Add(InBands(levy, charged) - AlreadyPaid(levy));
        }

        return paid;
    }

    /// <summary>The smallest profit, at least zero, that leaves <paramref name="need"/> after tax. At a flat 20 %, 8,000 needs 10,000.</summary>
    public decimal ProfitLeaving(decimal need)
    {
        var (from, kept, keptOfOneMore) = LinearPieceLeaving(need);
        return need > kept ? from + (need - kept) / keptOfOneMore : from;
    }

    /// <summary>The linear piece in which the profit that leaves <paramref name="need"/> lies: where it starts, what is left there, and what one more unit leaves.</summary>
    public (decimal From, decimal Kept, decimal KeptOfOneMore) LinearPieceLeaving(decimal need)
    {
        var piece = _pieces.LastOrDefault(piece => piece.Kept < need) ?? _pieces[0];
        return (piece.From, piece.Kept, piece.KeptOfOneMore);
    }

    /// <summary>The rules as levies: a flat rate is one levy with one band.</summary>
    public static IReadOnlyList<Levy> Levies(TaxRules rules) => rules.Kind switch
    {
        TaxKind.Flat => [new Levy { Name = "flat rate", Bands = [new Band { Rate = rules.Rate ?? 0 }] }],
        TaxKind.Levies => rules.Levies,
        _ => [],
    };

    private decimal Deductions(List<decimal> paid) => paid.Select((levy, j) => Levies(_rules)[j].DeductibleShare * levy).Sum();

    /// <summary>What the bands take of a base.</summary>
    private static decimal InBands(Levy levy, decimal charged)
    {
        decimal sum = 0, lower = 0;
        foreach (var band in levy.Bands)
        {
            var top = decimal.Min(charged, band.UpTo ?? charged);
            if (top > lower)
                sum += band.Rate * (top - lower);
            lower = band.UpTo ?? lower;
        }

        return sum;
    }

    /// <summary>What the income from elsewhere already pays in these bands.</summary>
    private static decimal AlreadyPaid(Levy levy) => InBands(levy, decimal.Max(0, levy.OtherBase - levy.Allowance));

    /// <summary>A stretch of profit over which every levy is a straight line.</summary>
    private sealed record Piece(decimal From, IReadOnlyList<decimal> Paid, IReadOnlyList<decimal> PaidOfOneMore)
    {
        public decimal Kept { get; } = From - Paid.Sum();
        public decimal KeptOfOneMore { get; } = 1 - PaidOfOneMore.Sum();
    }

    private static List<Piece> Pieces(IReadOnlyList<Levy> levies)
    {
        List<Piece> pieces = [new(0, [], [])];
        for (var i = 0; i < levies.Count; i++)
        {
            var before = pieces;
            var levy = levies[i];
            pieces = [.. before.SelectMany((piece, k) => WithLevy(piece, k + 1 < before.Count ? before[k + 1].From : null, levies, levy))];
        }

        return pieces;
    }

    /// <summary>Adds one levy to a piece, which splits where the levy's base crosses zero or a band's limit.</summary>
    private static IEnumerable<Piece> WithLevy(Piece piece, decimal? end, IReadOnlyList<Levy> levies, Levy levy)
    {
        var deductible = levies.Take(piece.Paid.Count).Select(earlier => earlier.DeductibleShare).ToList();
        var atStart = levy.Share * piece.From + levy.OtherBase - levy.Allowance - deductible.Zip(piece.Paid, (share, paid) => share * paid).Sum();
        var perUnit = levy.Share - deductible.Zip(piece.PaidOfOneMore, (share, paid) => share * paid).Sum();

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
            var step = from - piece.From;
            yield return new Piece(from,
                [.. piece.Paid.Zip(piece.PaidOfOneMore, (paid, more) => paid + more * step), InBands(levy, decimal.Max(0, charged)) - AlreadyPaid(levy)],
                [.. piece.PaidOfOneMore, RateAt(levy, inside) * perUnit]);
        }
    }

    private static decimal RateAt(Levy levy, decimal charged) =>
        charged <= 0 ? 0 : levy.Bands.First(band => band.UpTo is null || charged <= band.UpTo).Rate;
}
