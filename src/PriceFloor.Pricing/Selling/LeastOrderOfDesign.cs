using PriceFloor.Pricing.Costing;

namespace PriceFloor.Pricing.Selling;

/// <summary>A design that is listed on a channel, with its least order there.</summary>
/// <param name="Key">Key of the design.</param>
/// <param name="Piece">A piece of it.</param>
/// <param name="Price">Its listed price.</param>
/// <param name="Least">Its least order.</param>
public sealed record LeastOrderOfDesign(string Key, UnitCost Piece, decimal Price, LeastOrder Least);
