using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>The hours that accepted quotes still take of each profile's year, as a caller may see them at one moment.</summary>
internal sealed class PromisedHours
{
    private readonly Dictionary<string, decimal> _byProfile;

    private PromisedHours(Dictionary<string, decimal> byProfile) => _byProfile = byProfile;

    /// <param name="store">Where the quotes are.</param>
    /// <param name="context">Who asks.</param>
    /// <param name="asOf">The moment; now if null.</param>
    /// <param name="clock">What day it is now.</param>
    public static async ValueTask<PromisedHours> Of(Store store, HttpContext context, DateTimeOffset? asOf, TimeProvider clock)
    {
        var (access, today) = (Caller.Of(context).Access, StoredQuote.DayOf(asOf, clock));
        var quotes = await store.ReadAsync(snapshot => QuoteLoad.Of(snapshot, access, null, asOf, today));
        return new PromisedHours(quotes.GroupBy(quote => quote.Document.Profile)
            .ToDictionary(profile => profile.Key, profile => profile.Sum(quote => quote.Text.Issued!.BenchHours)));
    }

    /// <summary>Hours of a stored profile; 0 for one that came with the request.</summary>
    public decimal Of(Stored<CostProfile> profile) => profile.Revision is null ? 0 : _byProfile.GetValueOrDefault(profile.Key);
}
