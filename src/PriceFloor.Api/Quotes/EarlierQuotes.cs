using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>What the other quotes that a key sees say about a new one.</summary>
/// <param name="Count">How many of the last done ones are counted.</param>
/// <param name="Median">The median of what they took over what was quoted; null if none is done.</param>
/// <param name="Load">Hours of accepted quotes of the profile that are not done.</param>
internal sealed record EarlierQuotes(int Count, decimal? Median, decimal Load)
{
    private const int MostCounted = 20;

    /// <param name="snapshot">The store.</param>
    /// <param name="access">What the key sees.</param>
    /// <param name="profile">The profile whose hours are wanted; null if they are not.</param>
    /// <param name="asOf">The moment; now if null.</param>
    /// <param name="today">Its day.</param>
    public static async ValueTask<EarlierQuotes> Of(Snapshot snapshot, ProfileAccess access, string? profile, DateTimeOffset? asOf, DateOnly today)
    {
        var ratios = await Ratios(snapshot, access, asOf, today);
        return new EarlierQuotes(ratios.Count, MedianOf(ratios),
            profile is null ? 0 : (await QuoteLoad.Of(snapshot, access, profile, asOf, today)).Sum(quote => quote.Text.Issued!.BenchHours));
    }

    /// <summary>The one in the middle, or half way between the two in the middle.</summary>
    private static decimal? MedianOf(List<decimal> ordered) => ordered.Count == 0 ? null
        : (ordered[(ordered.Count - 1) / 2] + ordered[ordered.Count / 2]) / 2;

    /// <summary>What each of the last done quotes took over what was quoted, in order. One that is damaged is left out.</summary>
    private static async ValueTask<List<decimal>> Ratios(Snapshot snapshot, ProfileAccess access, DateTimeOffset? asOf, DateOnly today)
    {
        long? moment = asOf is { } at ? Moment.Of(at) : null;
        var ratios = new List<decimal>();
        foreach (var actual in (await snapshot.List(Kinds.QuoteActual, asOf: moment)).OrderByDescending(revision => revision.Position))
            if (ratios.Count < MostCounted
                    && await access.Seen(snapshot, snapshot.Find(Kinds.Quote, actual.Key, moment)) is { } revision
                    && QuoteText.FaultIn(revision.Body!) is null
                    && await StoredQuote.Of(snapshot, revision, asOf, today) is { State: QuoteState.Done, Text.Issued: { BenchHours: > 0 } issued }
                    && StoredText<QuoteActual>.Read(actual.Body!).Document is { } took)
                ratios.Add(took.BenchHours / issued.BenchHours);
        return [.. ratios.Order()];
    }
}
