using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;

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

    /// <summary>What may make the list incomplete: channels that are damaged in the store.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }
}

/// <summary>One listed price that falls short. Money in the profile's currency.</summary>
public sealed record ShortPriceAnswer
{
    /// <summary>Key of the design.</summary>
    public required string Sku { get; init; }

    /// <summary>Its name for people.</summary>
    public string? Name { get; init; }

    /// <summary>Key of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The listed price.</summary>
    public required decimal ListedPrice { get; init; }

    /// <summary>What it does for the year.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The floor on the channel less what reaches the studio, rounded up; 0 where only the target is missed.</summary>
    /// <example>3.65</example>
    public required decimal ShortBy { get; init; }

    /// <summary>The ways that are enough alone: a higher price first, then by the size of the change.</summary>
    public required IReadOnlyList<RemedyAnswer> Remedies { get; init; }

    /// <summary>The revisions that it rests on.</summary>
    public required BasisAnswer Basis { get; init; }
}
