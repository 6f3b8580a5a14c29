namespace PriceFloor.Evidence.Prices;

/// <summary>Pieces of one design that have stood for long.</summary>
/// <param name="Pieces">n, at least 1.</param>
/// <param name="Age">Days since they were made.</param>
/// <param name="Time">T: weighted weeks, or events, in which they are to be sold if they are marked down.</param>
/// <param name="Price">What is asked; null where it is not listed.</param>
/// <param name="Rework">What taking one apart brings: materials kept less the minutes that it takes; null where nobody said.</param>
/// <param name="IsAtGallery">Whether the same design stands unmarked at a gallery.</param>
public sealed record SlowPieces(int Pieces, int Age, decimal Time, decimal? Price, decimal? Rework, bool IsAtGallery);
