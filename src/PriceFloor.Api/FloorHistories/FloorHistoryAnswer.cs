namespace PriceFloor.Api.FloorHistories;

/// <summary>Floor, target and listed price of a design on a channel over time.</summary>
public sealed record FloorHistoryAnswer
{
    /// <summary>Key of the design.</summary>
    public required string Sku { get; init; }

    /// <summary>Name of the design.</summary>
    public string? Name { get; init; }

    /// <summary>Key of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>ISO 4217 code of the channel's prices.</summary>
    public required string Currency { get; init; }

    /// <summary>The moments at which something moved, in order of time; each holds until the next.</summary>
    public required IReadOnlyList<FloorMomentAnswer> Items { get; init; }

    /// <summary>If there is more, ask again with this as asOf for the time before; null if this is all.</summary>
    /// <example>2026-12-01T09:00:00.000000Z</example>
    public DateTimeOffset? Earlier { get; init; }
}
