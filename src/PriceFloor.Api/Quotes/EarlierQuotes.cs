using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>What the other quotes that a key sees say about a new one.</summary>
/// <param name="Run">What the last done ones took over what was quoted; null if none is done.</param>
/// <param name="Load">Hours of accepted quotes of the profile that are not done.</param>
internal sealed record EarlierQuotes(QuotesRun? Run, decimal Load)
{
    private const int MostCounted = 20;

    /// <param name="snapshot">The store.</param>
    /// <param name="access">What the key sees.</param>
    /// <param name="profile">The profile whose hours are wanted; null if they are not.</param>
    /// <param name="asOf">The moment; now if null.</param>
    /// <param name="today">Its day.</param>
    public static async ValueTask<EarlierQuotes> Of(Snapshot snapshot, ProfileAccess access, string? profile, DateTimeOffset? asOf, DateOnly today)
    {
        var done = await Done(snapshot, access, asOf, today);
        return new EarlierQuotes(QuotesRun.Of(done),
            profile is null ? 0 : (await QuoteLoad.Of(snapshot, access, profile, asOf, today)).Sum(quote => quote.Text.Issued!.BenchHours));
    }

    /// <summary>The last done quotes, the last first. One that is damaged is left out.</summary>
    private static async ValueTask<List<DoneQuote>> Done(Snapshot snapshot, ProfileAccess access, DateTimeOffset? asOf, DateOnly today)
    {
        long? moment = asOf is { } at ? Moment.Of(at) : null;
        var done = new List<DoneQuote>();
        foreach (var actual in (await snapshot.List(Kinds.QuoteActual, asOf: moment)).OrderByDescending(revision => revision.Position))
            if (done.Count < MostCounted
                    && await access.Seen(snapshot, snapshot.Find(Kinds.Quote, actual.Key, moment)) is { } revision
                    && QuoteText.FaultIn(revision.Body!) is null
                    && await StoredQuote.Of(snapshot, revision, asOf, today) is { State: QuoteState.Done, Text.Issued: { BenchHours: > 0 } issued }
                    && StoredText<QuoteActual>.Read(actual.Body!).Document is { } took)
                done.Add(new DoneQuote(actual.Key, took.BenchHours, issued.BenchHours));
        return done;
    }
}
