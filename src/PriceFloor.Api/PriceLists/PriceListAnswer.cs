using PriceFloor.Api.Documents;

namespace PriceFloor.Api.PriceLists;

/// <summary>Every design on a channel, or on all of them, in order of key.</summary>
public sealed record PriceListAnswer
{
    /// <summary>In order of design, then of channel: all of them, or a page if limit is given.</summary>
    public required IReadOnlyList<PriceListItemAnswer> Items { get; init; }

    /// <summary>Send this as after for the next page; null on the last.</summary>
    /// <example>RB-014/web</example>
    public required string? Next { get; init; }

    /// <summary>The revisions that the list rests on.</summary>
    public required PriceListBasisAnswer Basis { get; init; }

    /// <summary>Listed prices that the channel's grid does not allow.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }
}

/// <summary>The revisions that a price list rests on, besides each design's own.</summary>
/// <param name="Profiles">Profiles with their revisions.</param>
/// <param name="Channels">Channels with their revisions.</param>
public sealed record PriceListBasisAnswer(IReadOnlyList<string> Profiles, IReadOnlyList<string> Channels);
