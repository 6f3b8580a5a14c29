using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>The work that is promised: quotes that are accepted and not done.</summary>
internal static class QuoteLoad
{
    /// <summary>They in order of key, as a key sees them. One that is damaged is left out.</summary>
    /// <param name="snapshot">The store.</param>
    /// <param name="access">What the key sees.</param>
    /// <param name="profile">Only quotes of this profile; null for all.</param>
    /// <param name="asOf">The moment; now if null.</param>
    /// <param name="today">Its day.</param>
    public static async ValueTask<List<StoredQuote>> Of(Snapshot snapshot, ProfileAccess access, string? profile, DateTimeOffset? asOf,
        DateOnly today)
    {
        long? moment = asOf is { } at ? Moment.Of(at) : null;
        var load = new List<StoredQuote>();
        foreach (var outcome in (await snapshot.List(Kinds.QuoteOutcome, asOf: moment))
            .Where(outcome => StoredText<QuoteOutcome>.Read(outcome.Body!).Document?.Result == QuoteResult.Accepted))
            if (await access.Seen(snapshot, snapshot.Find(Kinds.Quote, outcome.Key, moment)) is { } revision
                    && QuoteText.FaultIn(revision.Body!) is null
                    && await StoredQuote.Of(snapshot, revision, asOf, today) is { State: QuoteState.Accepted } quote
                    && (profile is null || quote.Document.Profile == profile))
                load.Add(quote);
        return load;
    }
}
