using PriceFloor.Pricing.Costing;

namespace PriceFloor.Pricing.Selling;

/// <summary>Pieces of one design in an order, at a price as listed; in a gift there is no price.</summary>
public sealed record OrderItem(UnitCost Piece, int Pieces, decimal Price);
