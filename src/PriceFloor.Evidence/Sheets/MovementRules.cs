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
        if (line.On is not { } day || line.Sku.Length == 0)
            return FaultCodes.Required;
        if (!LogRanges.Fits(day))
            return FaultCodes.OutOfRange;
        if (line.What == MovementKind.Sold && line.Value is null)
            return FaultCodes.Required;
        if (line.Channel is null && line.What is MovementKind.Sold or MovementKind.Returned or MovementKind.Sent or MovementKind.Back)
            return FaultCodes.Required;
        if (line.Pieces > LogRanges.MostPieces || line.Pieces < (line.What == MovementKind.Counted ? 0 : 1))
            return FaultCodes.OutOfRange;
        return LogRanges.Fits(line.Value) && LogRanges.Fits(line.Listed) && LogRanges.Fits(line.Discount) && LogRanges.Fits(line.Fees)
            && LogRanges.Fits(line.ShippingCharged) && LogRanges.Fits(line.ShippingCost)
            && LogRanges.Fits(line.Ref) && LogRanges.Fits(line.Order) && LogRanges.Fits(line.Stall) && LogRanges.Fits(line.Piece) ? null
            : FaultCodes.OutOfRange;
    }
}
