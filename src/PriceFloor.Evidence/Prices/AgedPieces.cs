namespace PriceFloor.Evidence.Prices;

/// <summary>Pieces on hand that are equally old.</summary>
/// <param name="Made">The day on which they were made.</param>
/// <param name="Age">Days since then.</param>
/// <param name="Pieces">How many; at least 1.</param>
public sealed record AgedPieces(DateOnly Made, int Age, int Pieces);
