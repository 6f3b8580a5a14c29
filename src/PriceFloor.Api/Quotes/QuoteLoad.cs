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
    public static List<StoredQuote> Of(Snapshot snapshot, ProfileAccess access, string? profile, DateTimeOffset? asOf, DateOnly today)
    {
        long? moment = asOf is { } at ? Moment.Of(at) : null;
        return
        [
            .. snapshot.List(Kinds.QuoteOutcome, asOf: moment)
                .Where(outcome => StoredText<QuoteOutcome>.Read(outcome.Body!).Document?.Result == QuoteResult.Accepted)
                .Select(outcome => snapshot.Find(Kinds.Quote, outcome.Key, moment)).OfType<Revision>()
                .Where(quote => access.Sees(snapshot, quote) && QuoteText.FaultIn(quote.Body!) is null)
                .Select(quote => StoredQuote.Of(snapshot, quote, asOf, today))
                .Where(quote => quote.State == QuoteState.Accepted && (profile is null || quote.Document.Profile == profile)),
        ];
    }
}
