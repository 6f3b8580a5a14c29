namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>What was sold of a design on a channel in the year so far.</summary>
/// <param name="Sku">The design's key.</param>
/// <param name="Channel">The channel's key.</param>
/// <param name="Pieces">Pieces that stayed sold.</param>
/// <param name="Net">What of them reached the studio, all together.</param>
/// <param name="Materials">Materials of a piece.</param>
/// <param name="SecondsCredit">What seconds bring for a piece.</param>
public sealed record SoldSoFar(string Sku, string Channel, decimal Pieces, decimal Net, decimal Materials, decimal SecondsCredit);
