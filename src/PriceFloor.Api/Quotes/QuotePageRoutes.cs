using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>The client's page of a quote.</summary>
public static class QuotePageRoutes
{
    public static async Task<IResult> Get(PathKey path, FromQuery<ReadQuery> query, Store store, CatalogueReader reader, TimeProvider clock,
        HttpContext context)
    {
        var (asOf, caller) = (query.Value.AsOf, Caller.Of(context));
        var quote = await store.ReadAsync(snapshot =>
            StoredQuote.Find(snapshot, path.Text, caller.Access, asOf, StoredQuote.DayOf(asOf, clock)));
        if (quote is null)
            return Problem.Of(ProblemTypes.NotFound, $"There is no quote \"{path.Text}\"{(asOf is null ? "" : " at that time")}.");
        if (quote.State == QuoteState.Draft && !caller.May(Scope.Read))
            return Problem.Of(ProblemTypes.KeyNotAllowed,
                "A quote that is not issued is the maker's own; its page needs a key with the scope \"read\".");
        var (names, currency) = quote.Text.Issued is { } issued ? (issued.Names, issued.Currency)
            : await reader.Read(asOf, catalogue => OfDraft(catalogue, quote.Document));
        return TaggedBody.Of(QuotePage.Of(quote, [.. quote.Document.Lines.Zip(names, NameOf)], currency)).Answer(context, Format.Html);
    }

    /// <summary>A draft holds its channel and its designs, so they are there.</summary>
    private static (IReadOnlyList<string?> Names, Currency Currency) OfDraft(Catalogue catalogue, Quote quote) =>
        ([.. quote.Lines.Select(line => line.Name ?? (line.Design.Document ?? catalogue.Design(line.Design.Key!)?.Document)?.Name)],
            Currency.Of(catalogue.Channel(quote.Channel)!.Document.Currency));

    private static string NameOf(QuoteLine line, string? name) => name ?? line.Design.Key ?? "Made to order";
}
