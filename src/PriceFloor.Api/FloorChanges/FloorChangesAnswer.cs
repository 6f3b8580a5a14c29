namespace PriceFloor.Api.FloorChanges;

/// <summary>What moved since a time or since the last answer.</summary>
public sealed record FloorChangesAnswer
{
    /// <summary>In order of design, then of channel.</summary>
    public required IReadOnlyList<FloorChangeItemAnswer> Items { get; init; }

    /// <summary>Send this as since for the following answer: the rest of this one if limit cut it, else what moves from now on.</summary>
    public required string Next { get; init; }
}
