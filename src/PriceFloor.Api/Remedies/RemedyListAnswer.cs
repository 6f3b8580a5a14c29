using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Remedies;

/// <summary>Every listed price that falls short, with the ways to fix it.</summary>
public sealed record RemedyListAnswer
{
    /// <summary>What the remedies bring the prices to.</summary>
    public required RemedyGoal Toward { get; init; }

    /// <summary>The prices, in the order that was asked for.</summary>
    public required IReadOnlyList<ShortPriceAnswer> Items { get; init; }

    /// <summary>Where the next page begins: give it as after; null where there is none.</summary>
    /// <example>RB-014/web</example>
    public required string? Next { get; init; }

    /// <summary>What may make the list incomplete (channels that are damaged in the store), or a way of little use (hours that lie idle).</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }
}
