using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Quotes;
using PriceFloor.Storage;

namespace PriceFloor.Api.Sureness;

/// <summary>The plan and the quote that a question names, both of its profile.</summary>
/// <param name="Plan">The plan; null if it names none.</param>
/// <param name="Quote">The quote; null if it names none.</param>
internal sealed record SurenessNames(Stored<Plan>? Plan, Stored<Quote>? Quote)
{
    public static async Task<Outcome<SurenessNames>> Of(SurenessRequest request, Catalogue catalogue, Stored<CostProfile> profile, Store store,
        HttpContext context, DateTimeOffset? asOf)
    {
        var faults = new List<Fault>();
        var plan = request.Plan is { } key && catalogue.Plan(key) is { } known && known.Document.Profile == profile.Key ? known : null;
        if (request.Plan is not null && plan is null)
            faults.Add(Unknown("plan", InputCodes.UnknownPlan, request.Plan, profile));
        var quote = request.Quote is { } number ? await QuoteOf(number, profile, store, context, asOf) : null;
        if (request.Quote is not null && quote is null)
            faults.Add(Unknown("quote", InputCodes.UnknownQuote, request.Quote, profile));
        return faults.Count > 0 ? faults : new SurenessNames(plan, quote);
    }

    private static async Task<Stored<Quote>?> QuoteOf(string key, Stored<CostProfile> profile, Store store, HttpContext context, DateTimeOffset? asOf)
    {
        var day = DateOnly.FromDateTime((asOf ?? DateTimeOffset.MinValue).UtcDateTime); // its state does not matter here
        var found = await store.ReadAsync(async snapshot => await StoredQuote.Find(snapshot, key, Caller.Of(context).Access, asOf, day));
        return found is { } quote && quote.Document.Profile == profile.Key ? Stored<Quote>.Read(quote.Revision, quote.Document) : null;
    }

    private static RequestFault Unknown(string field, Code code, string key, Stored<CostProfile> profile) => RequestFault.Unknown(
        Place.Body.Error(field, code, $"There is no {field} \"{key}\" for the profile \"{profile.Key}\"; case counts."));
}
