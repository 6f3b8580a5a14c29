using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Orders;

/// <summary>What the good pieces of a design really brought, and what that makes an hour at the bench earn. Unrounded.</summary>
/// <param name="Pieces">Sold, less those that came back.</param>
/// <param name="Net">What of it reached the studio.</param>
public sealed record Take(int Pieces, decimal Net)
{
    /// <summary>The take of a design's sold lines; null if it sold none.</summary>
    public static Take? Of(IReadOnlyList<SoldLine> lines)
    {
        var (any, pieces, net) = (false, 0, 0m);
        foreach (var line in lines)
            if (line.Line.Grade == Grade.Good)
                (any, pieces, net) = (true, checked(pieces + line.Line.Pieces - line.Returned), net + line.Kept);
        return any ? new Take(pieces, net) : null;
    }

    /// <summary>The take less the materials of its pieces: take - pieces * (M - C).</summary>
    public decimal Contribution(UnitCost piece) => Net - Pieces * (piece.Materials - piece.SecondsCredit);

    /// <summary>What an hour at the bench earned; null if all came back.</summary>
    public decimal? Earned(UnitCost piece) => Pieces == 0 ? null : Contribution(piece) / (Pieces * piece.BenchHours);

    /// <summary>The bench hours of its pieces.</summary>
    public decimal Hours(UnitCost piece) => Pieces * piece.BenchHours;
}
