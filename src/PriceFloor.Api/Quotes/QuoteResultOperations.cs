using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Quotes;

/// <summary>The addresses of what is stored about an issued quote, and their descriptions in the contract.</summary>
internal static class QuoteResultOperations
{
    private static readonly ExampleFolder s_files = new(typeof(QuoteResultOperations));

    private static readonly Noun s_outcome = new("quote's outcome", "outcomes of a quote", "QuoteOutcome", "Quotes", typeof(QuoteOutcome),
        s_files["quoteOutcome.request.json"], s_files["quoteOutcome.answer.json"]);

    private static readonly Noun s_actual = new("quote's actual figures", "actual figures of a quote", "QuoteActual", "Quotes", typeof(QuoteActual),
        s_files["quoteActual.request.json"], s_files["quoteActual.answer.json"]);

    private static readonly Operation PutOutcome = DocumentOperations.Put(s_outcome) with
    {
        Description = "What became of an issued quote: accepted, declined or withdrawn, and on which day. A draft has none. The same content again "
            + "changes nothing. Scope: write.",
        Problems = [ProblemTypes.StaleRevision, ProblemTypes.Issued, ProblemTypes.NotIssued],
    };

    private static readonly Operation PutActual = DocumentOperations.Put(s_actual) with
    {
        Description = "What the work really took, all hours counted. Beside an outcome that is accepted it makes the quote done, and later drafts "
            + "say how far the work ran over what was quoted. Scope: write.",
        Problems = [ProblemTypes.StaleRevision, ProblemTypes.Issued, ProblemTypes.NotIssued],
    };

    public static void MapQuoteResults(this RouteGroupBuilder v1)
    {
        v1.MapGet("/quotes/{key}/outcome", DocumentRoutes.Get<QuoteOutcome>).Needs(Scope.Read).Tell(DocumentOperations.Get(s_outcome));
        v1.MapPut("/quotes/{key}/outcome", DocumentRoutes.Put<QuoteOutcome>).Needs(Scope.Write).Tell(PutOutcome);
        v1.MapDelete("/quotes/{key}/outcome", DocumentRoutes.Delete<QuoteOutcome>).Needs(Scope.Write).Tell(DocumentOperations.Delete(s_outcome));
        v1.MapGet("/quotes/{key}/outcome/revisions", DocumentRoutes.Revisions<QuoteOutcome>).Needs(Scope.Read)
            .Tell(DocumentOperations.Revisions(s_outcome));
        v1.MapGet("/quotes/{key}/outcome/revisions/{number}", DocumentRoutes.Revision<QuoteOutcome>).Needs(Scope.Read)
            .Tell(DocumentOperations.Revision(s_outcome));
        v1.MapGet("/quotes/{key}/actual", DocumentRoutes.Get<QuoteActual>).Needs(Scope.Read).Tell(DocumentOperations.Get(s_actual));
        v1.MapPut("/quotes/{key}/actual", DocumentRoutes.Put<QuoteActual>).Needs(Scope.Write).Tell(PutActual);
        v1.MapDelete("/quotes/{key}/actual", DocumentRoutes.Delete<QuoteActual>).Needs(Scope.Write).Tell(DocumentOperations.Delete(s_actual));
        v1.MapGet("/quotes/{key}/actual/revisions", DocumentRoutes.Revisions<QuoteActual>).Needs(Scope.Read)
            .Tell(DocumentOperations.Revisions(s_actual));
        v1.MapGet("/quotes/{key}/actual/revisions/{number}", DocumentRoutes.Revision<QuoteActual>).Needs(Scope.Read)
            .Tell(DocumentOperations.Revision(s_actual));
    }
}
