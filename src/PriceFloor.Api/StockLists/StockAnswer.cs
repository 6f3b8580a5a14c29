using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence.Logged;

namespace PriceFloor.Api.StockLists;

/// <summary>Pieces on hand that are slow to sell, and what can be done with them. Nothing is changed by itself.</summary>
public sealed record StockAnswer
{
    /// <summary>Pieces that are more than so many days old are slow.</summary>
    /// <example>365</example>
    public required int OlderThan { get; init; }

    /// <summary>The day of which the stock is.</summary>
    /// <example>2027-12-31</example>
    public required DateOnly To { get; init; }

    /// <summary>The designs that have slow pieces, by sku.</summary>
    public required IReadOnlyList<StockItemAnswer> Items { get; init; }

    /// <summary>Designs of which the log does not say how many pieces are on hand: more were sold than were made.</summary>
    /// <example>[]</example>
    public required IReadOnlyList<string> Unknown { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>What the figures rest on that nobody measured.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What the answer rests on.</summary>
    public required EvidenceBasisAnswer Basis { get; init; }
}
