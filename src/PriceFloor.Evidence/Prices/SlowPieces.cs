namespace PriceFloor.Evidence.Prices;

/// <summary>Pieces of one design that have stood for long.</summary>
/// <param name="Lots">How many are how old; at least one piece.</param>
/// <param name="Time">T: weighted weeks, or events, in which they are to be sold if they are marked down.</param>
/// <param name="Price">What is asked; null where it is not listed.</param>
/// <param name="Rework">What taking one apart brings: materials kept less the minutes that it takes; null where nobody said.</param>
/// <param name="IsAtGallery">Whether the same design stands unmarked at a gallery.</param>
public sealed record SlowPieces(IReadOnlyList<AgedPieces> Lots, decimal Time, decimal? Price, decimal? Rework, bool IsAtGallery)
{
    /// <summary>n.</summary>
    public int Pieces => Lots.Sum(lot => lot.Pieces);
}
