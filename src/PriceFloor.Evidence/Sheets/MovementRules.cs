using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Sheets;

/// <summary>What a movement must say, whether it came in a sheet or as JSON.</summary>
public static class MovementRules
{
    /// <summary>The line with its first fault, if it has one and cannot be used for it.</summary>
    public static SentMovement Checked(SentMovement line) =>
        line.Fault is null && FaultOf(line) is { } fault ? line with { Fault = fault } : line;

    private static Code? FaultOf(SentMovement line)
    {
        if (line.On is null || line.Sku.Length == 0)
            return FaultCodes.Required;
        if (line.What == MovementKind.Sold && line.Value is null)
            return FaultCodes.Required;
        if (line.Channel is null && line.What is MovementKind.Sold or MovementKind.Returned or MovementKind.Sent or MovementKind.Back)
            return FaultCodes.Required;
        if (line.Pieces > LogRanges.MostPieces || line.Pieces < (line.What == MovementKind.Counted ? 0 : 1))
            return FaultCodes.OutOfRange;
        decimal?[] amounts = [line.Value, line.Listed, line.Discount, line.Fees, line.ShippingCharged, line.ShippingCost];
        string?[] texts = [line.Ref, line.Order, line.Stall, line.Piece];
        return Array.TrueForAll(amounts, LogRanges.Fits) && Array.TrueForAll(texts, LogRanges.Fits) ? null : FaultCodes.OutOfRange;
    }
}
