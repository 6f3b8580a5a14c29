using System.Text.Json;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>Issuing: the figures of the moment become part of the quote, as text, in the same transaction as they are computed.</summary>
public static class QuoteIssueRoutes
{
    public static async Task<IResult> Issue(PathKey path, Store store, DocumentKind<Quote> kind, CatalogueReader reader, IDesignLearning learning,
        HttpContext context)
    {
        var read = Preconditions.Of(context.Request);
        if (read.Found is not { } preconditions)
            return Problem.Of(read.Faults);
        var caller = Caller.Of(context);
        var outcome = await store.WriteAsync<Outcome<Revision>>(caller, async writing =>
        {
            var today = DateOnly.FromDateTime(writing.Now.UtcDateTime);
            if (await StoredQuote.Find(writing, path.Text, caller.Access, null, today) is not { } quote)
                return RequestFault.NotFound($"There is no quote \"{path.Text}\".");
            if (quote.Text.Issued is not null)
                return quote.ShownTo(caller); // it is done already, whatever If-Match asks for
            if (preconditions.Forbid(quote.Revision.Number))
                return RequestFault.Stale(quote.Revision.Number);
            var catalogue = await reader.WholeWithin(writing);
            var learned = await QuotedLearning.Of(writing, learning, catalogue, quote.Document, null);
            var issued = await Issued(writing, quote, catalogue, learned, await EarlierQuotes.Of(writing, caller.Access,
                QuoteFiguresRoutes.HoursWanted(quote.Document), null, today));
            return issued.Found is { } revision ? (await StoredQuote.Of(writing, revision, null, today)).ShownTo(caller) : issued;
        });
        return outcome.Found is { } shown ? DocumentText.Answer(shown, kind.NamesOf(shown.Key), context.Request) : Problem.Of(outcome.Faults);
    }

    private static async ValueTask<Outcome<Revision>> Issued(Writing writing, StoredQuote quote, Catalogue catalogue, QuotedLearning learned,
        EarlierQuotes earlier)
    {
        if (Missing(quote.Document).ToList() is { Count: > 0 } missing)
            return missing;
        var figures = QuoteFigures.Of(catalogue, quote.Document, learned);
        if (figures.Found is not { } found)
            return figures.Faults.ToList();
        var answer = found.Answer(catalogue, QuoteFiguresRoutes.Basis(quote), earlier, workings: false) with { IssuedAt = writing.Now };
        var text = quote.Text with { Issued = QuoteIssue.Of(writing.Now, JsonSerializer.Serialize(answer, WireJson.Options)) };
        return await writing.Save(Kinds.Quote, quote.Key, text.Write(), []);
    }

    private static IEnumerable<Fault> Missing(Quote quote)
    {
        if (quote.Price is null)
            yield return Missing("price", "The quote has no price; PUT it with the total that is asked.");
        if (quote.ValidUntil is null)
            yield return Missing("validUntil", "The quote has no last valid day; PUT it with validUntil.");
    }

    private static RequestFault Missing(string field, string detail) =>
        RequestFault.Invalid(Place.Body.Error(field, FaultCodes.Required, detail));
}
