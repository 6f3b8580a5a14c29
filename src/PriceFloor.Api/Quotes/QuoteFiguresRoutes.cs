using System.Text;
using System.Text.Json;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>The figures of a stored quote, and of one that comes with the request.</summary>
public static class QuoteFiguresRoutes
{
    /// <summary>A draft's figures are computed; an issued quote's are the text that was issued, with what they would be now behind it.</summary>
    public static async Task<IResult> Get(PathKey path, FromQuery<ComputeQuery> query, Store store, CatalogueReader reader, IDesignLearning learning,
        TimeProvider clock, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var ((asOf, workings), access) = (query.Value, Caller.Of(context).Access);
        var today = StoredQuote.DayOf(asOf, clock);
        var (quote, earlier) = await store.ReadAsync(async snapshot => await StoredQuote.Find(snapshot, path.Text, access, asOf, today) is { } found
            ? (found, found.Text.Issued is null ? await EarlierQuotes.Of(snapshot, access, HoursWanted(found.Document), asOf, today) : null)
            : default);
        if (quote is null)
            return Problem.Of(ProblemTypes.NotFound, $"There is no quote \"{path.Text}\"{(asOf is null ? "" : " at that time")}.");
        var learned = await QuotedLearning.Of(store, learning, reader, quote.Document, asOf);
        return await reader.Read<IResult>(asOf, catalogue =>
        {
            var figures = QuoteFigures.Of(catalogue, quote.Document, learned);
            return quote.Text.Issued is { } issued ? new IssuedFigures(issued.Figures, QuoteFigures.Moved(figures, issued))
                : figures.Found is { } found ? JsonAnswer.Of(found.Answer(catalogue, Basis(quote), earlier!, workings))
                : Problem.Of(figures.Faults);
        });
    }

    public static async Task<IResult> Post(JsonBody<QuoteFiguresRequest> body, FromQuery<ComputeQuery> query, Store store, CatalogueReader reader,
        IDesignLearning learning, TimeProvider clock, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var ((asOf, workings), request) = (query.Value, body.Value);
        var (access, today) = (Caller.Of(context).Access, StoredQuote.DayOf(asOf, clock));
        var earlier = await store.ReadAsync(snapshot =>
            EarlierQuotes.Of(snapshot, access, request.Promised is null ? null : request.Profile.Key, asOf, today));
        var learned = await QuotedLearning.Of(store, learning, reader, request, asOf);
        return await reader.Read<IResult>(asOf, catalogue =>
        {
            var figures = QuoteFigures.Of(catalogue, request.Profile, request.Channel, request, learned);
            return figures.Found is { } found ? JsonAnswer.Of(found.Answer(catalogue, null, earlier, workings)) : Problem.Of(figures.Faults);
        });
    }

    /// <summary>Whose promised hours the figures ask for: nobody's, if nothing is promised.</summary>
    internal static string? HoursWanted(Quote quote) => quote.Promised is null ? null : quote.Profile;

    internal static string Basis(StoredQuote quote) => FormattableString.Invariant($"{quote.Key}@{quote.Revision.Number}");

    /// <summary>The issued text, word for word, and behind it what it would be now.</summary>
    private sealed class IssuedFigures(string figures, QuoteMovedAnswer moved) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            var body = Encoding.UTF8.GetBytes(
                $"{figures.AsSpan(0, figures.Length - 1)},\"moved\":{JsonSerializer.Serialize(moved, WireJson.Options)}}}");
            httpContext.Response.ContentType = JsonAnswer.ContentType;
            httpContext.Response.ContentLength = body.Length;
            return AnswerBlocks.WriteAsync(httpContext.Response, body, httpContext.RequestAborted);
        }
    }
}
