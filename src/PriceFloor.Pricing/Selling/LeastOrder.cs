namespace PriceFloor.Pricing.Selling;

/// <summary>
/// The least order of one design: the smallest number of pieces from which on it carries its share. A bead of 24.00 that pays for its postage only
/// from two on: 2 pieces, 48.00.
/// </summary>
/// <param name="Pieces">The pieces; null if no number up to <see cref="MostPieces"/> carries its share.</param>
/// <param name="Total">What they come to as listed, before the offer; null with them.</param>
public sealed record LeastOrder(int? Pieces, decimal? Total)
{
    /// <summary>Orders of more pieces are not looked at.</summary>
    public const int MostPieces = 200;

    /// <summary>
    /// From what total on an order of any one design carries its share: the largest of those that need more than one piece. Null if each
    /// carries its share alone. Designs that never do are left out: name them beside it.
    /// </summary>
    public static decimal? Threshold(IEnumerable<LeastOrder> designs) => designs.Where(one => one.Pieces > 1).Max(one => one.Total);
}
