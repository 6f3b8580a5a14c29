namespace PriceFloor.Evidence;

/// <summary>A design as it is stored, and what is known of it beside.</summary>
/// <param name="Sku">Its key.</param>
/// <param name="Stored">The piece of it in its profile's year.</param>
/// <param name="MadeSoSince">The first day of the present way of making, where it was another before; null: it never was.</param>
public sealed record KnownDesign(string Sku, UnitCost Stored, DateOnly? MadeSoSince = null);
