using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Findings;

/// <summary>One number taken from the log.</summary>
public sealed record Finding
{
    /// <summary>JSON pointer of the stored field that it speaks about, such as <c>/soldShare</c>.</summary>
    public required string Pointer { get; init; }

    public required Estimate Estimate { get; init; }

    /// <summary>How many were seen.</summary>
    public required long Observations { get; init; }

    /// <summary>What of: "orders".</summary>
    public required string Of { get; init; }

    /// <summary>As how many single pieces they are worth, whole; null where it is as many as were seen.</summary>
    public decimal? Worth { get; init; }

    /// <summary>How much of the number is the design's own, 4 decimals; the rest is what other designs say. Null where they say nothing.</summary>
    public decimal? OwnWeight { get; init; }

    /// <summary>What is stored there; null if nothing is.</summary>
    public required decimal? Stored { get; init; }

    public required Says Says { get; init; }

    /// <summary>How it was found, where there is more than one way.</summary>
    public string? Method { get; init; }

    /// <summary>For fees: the orders, replayed.</summary>
    public FeeReplay? Fees { get; init; }

    /// <summary>What an estimate says of a stored number.</summary>
    internal static Says Judge(Estimate estimate, decimal? stored, bool isEnough)
    {
        if (!isEnough || estimate is not { Low: { } low, High: { } high })
            return Says.TooFew;
        var compared = stored ?? 0;
        return compared < low ? Says.StoredTooLow : compared > high ? Says.StoredTooHigh : Says.Agrees;
    }
}

/// <summary>A finding, and the document with it; null where nothing is drafted from it.</summary>
public sealed record Found<T>(Finding Finding, Func<T, T>? Change)
{
    /// <summary>The document with all that was found.</summary>
    public static T Draft(T document, IEnumerable<Found<T>> findings) =>
        findings.Where(found => found.Finding.Says != Says.TooFew && found.Change is not null).Aggregate(document, (draft,
            found) => found.Change!(draft));
}
