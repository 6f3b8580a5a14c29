using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Prices;

/// <summary>The pieces of one design that are on hand, and which of them are slow to sell.</summary>
public sealed class StandingStock
{
    private readonly SoldCurve _curve;

    private StandingStock(DesignEvidence design, SoldCurve curve, bool knowsSales, int olderThan)
    {
        (Design, _curve, KnowsSales) = (design, curve, knowsSales);
        Lots = [.. design.Shelf.Ages.Select(lot => new AgedPieces(lot.Made, design.Shelf.To.DayNumber - lot.Made.DayNumber, lot.Pieces))];
        Slow = [.. Lots.Where(lot => lot.Age > olderThan || (knowsSales && SlowStock.IsUnlikely(curve, lot.Age)))];
    }

    public DesignEvidence Design { get; }

    /// <summary>Whether enough pieces were sold to say how likely one of an age sells. If not, only its age makes a piece slow.</summary>
    public bool KnowsSales { get; }

    /// <summary>All pieces on hand, oldest first.</summary>
    public IReadOnlyList<AgedPieces> Lots { get; }

    /// <summary>Those that are older than asked, or not likely to be sold in half a year.</summary>
    public IReadOnlyList<AgedPieces> Slow { get; }

    /// <summary>What a piece takes as found; as stored if that has no floor.</summary>
    public UnitCost Piece => Design.AsFound.Found ?? Design.Known.Stored;

    /// <summary>The stock of a design; null where none is on hand, or the lines do not say how many.</summary>
    /// <param name="design">The design.</param>
    /// <param name="olderThan">Days: older pieces are slow.</param>
    public static StandingStock? Of(DesignEvidence design, int olderThan) =>
        design is { Shelf: { IsKnown: true, OnHand: > 0 }, SoldShare: { } sold }
            ? new StandingStock(design, sold.Curve, sold.IsEnough, olderThan) : null;

    /// <summary>What can be done with the slow ones.</summary>
    /// <param name="question">The design on a channel; null where it is for sale nowhere.</param>
    /// <param name="stock">The slow ones.</param>
    public SlowStock WaysOut(PriceQuestion? question, SlowPieces stock) =>
        question is null ? SlowStock.NotOnOffer(Piece, _curve, stock) : SlowStock.Of(question, _curve, stock);

    /// <summary>What taking a piece apart brings: what is kept of its materials, less the bench time that it takes. Unrounded.</summary>
    /// <param name="kept">The share of the materials that is kept.</param>
    /// <param name="minutes">Bench minutes that it takes.</param>
    public decimal Rework(decimal kept, decimal minutes) => Materials * kept - minutes * Piece.Year.PerBenchHour / 60;

    /// <summary>The materials of one piece as it is begun and finished, without those of rejected ones. Unrounded.</summary>
    public decimal Materials => Piece.Design.Materials.Sum(line => UnitCost.CostOf(line, Piece.Year));
}
