namespace PriceFloor.Api.Sureness;

/// <summary>The figures of one draw, unrounded.</summary>
/// <param name="PerBenchHour">What a carrying hour must bring.</param>
/// <param name="Floor">F; 0 if no design is asked about.</param>
/// <param name="ChannelFloor">F_c; 0 if no channel is asked about.</param>
/// <param name="FloorPrice">The floor price where the channel is drawn too; else it follows from F_c.</param>
/// <param name="Holds">Whether the price in question carries its share.</param>
internal readonly record struct DrawnFigures(decimal PerBenchHour, decimal Floor, decimal ChannelFloor, decimal? FloorPrice, bool Holds)
{
    /// <summary>The plan; null if none is asked about.</summary>
    public PlanDraw? Plan { get; init; }

    /// <summary>What taking the quote or the line gains; null if there is nothing to decide.</summary>
    public decimal? Gain { get; init; }
}
