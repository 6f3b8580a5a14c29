using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Patches;

namespace PriceFloor.Api.Quotes;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class QuoteOperations
{
    private static readonly ExampleFolder s_files = new(typeof(QuoteOperations));

    private static readonly Noun s_quote = new("quote", "quotes", "Quote", "Quotes", typeof(Quote),
        s_files["quote.goblets.request.json"], s_files["quote.goblets.answer.json"])
    {
        Cases = QuoteCases.Quotes,
    };

    private static readonly Operation Quotes = DocumentOperations.List(s_quote) with
    {
        Description = "The quotes in order of key, a page at a time, all of them or those in one state. Scope: read.",
    };

    private static readonly Operation PutQuote = DocumentOperations.Put(s_quote) with
    {
        Description = "Creates a draft or appends a revision to it; the same content again changes nothing. You can PUT back what GET gave: key, "
            + "revision, savedAt, state, issuedAt and supersededBy are ignored. An issued quote cannot be changed. Scope: write.",
        Problems = [.. DocumentOperations.Put(s_quote).Problems, ProblemTypes.Issued, ProblemTypes.CannotCompute],
    };

    private static readonly Operation PatchQuote =
        PatchOperations.Patch(s_quote, s_files["patchQuote.request.json"], s_files["patchQuote.answer.json"]) with
        {
            Description = "A JSON Merge Patch (RFC 7396) of a draft: members that it has replace those of the quote, null gives the default back, "
                + "objects are merged, and a list is replaced whole. The result is checked like a whole quote and appended as a revision; nothing "
                + "changes if it is the same. An issued quote cannot be changed. Scope: write.",
            Problems = [ProblemTypes.NotFound, .. PutQuote.Problems],
            KeyExample = "Q-2027-014-2",
        };

    private static readonly Operation DeleteQuote = DocumentOperations.Delete(s_quote) with
    {
        Description = "Hides the draft and keeps its history; a PUT brings it back. An issued quote cannot be deleted. Scope: write.",
        Problems = [ProblemTypes.InUse, ProblemTypes.StaleRevision, ProblemTypes.Issued],
        KeyExample = "Q-2027-014-2",
    };

    private static readonly Operation Revise = new("reviseQuote", "Quotes", "Make a changed offer",
        "Makes a draft under another key from an issued quote, which is superseded by it. Nothing of the issued quote changes. "
        + "A key that may not read is told the state alone. Scope: write.")
    {
        Answer = typeof(Quote),
        AnswerOtherwise = typeof(QuoteStepAnswer),
        HasRevision = true,
        HasLocation = true,
        RequestExample = s_files["reviseQuote.request.json"],
        AnswerExample = s_files["reviseQuote.answer.json"],
        Good = new Dictionary<int, string> { [201] = "The new draft." },
        Problems = [ProblemTypes.Issued, ProblemTypes.NotIssued, ProblemTypes.InUse, ProblemTypes.StaleRevision, ProblemTypes.UnknownReference,
            ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapQuotes(this RouteGroupBuilder v1)
    {
        v1.MapGet("/quotes", QuoteRoutes.List).Needs(Scope.Read).Tell(Quotes);
        v1.MapGet("/quotes/{key}", DocumentRoutes.Get<Quote>).Needs(Scope.Read).Tell(DocumentOperations.Get(s_quote));
        v1.MapPut("/quotes/{key}", DocumentRoutes.Put<Quote>).Needs(Scope.Write).Tell(PutQuote);
        v1.MapPatch("/quotes/{key}", PatchRoutes.Patch<Quote>).Needs(Scope.Write).Tell(PatchQuote);
        v1.MapDelete("/quotes/{key}", DocumentRoutes.Delete<Quote>).Needs(Scope.Write).Tell(DeleteQuote);
        v1.MapGet("/quotes/{key}/revisions", DocumentRoutes.Revisions<Quote>).Needs(Scope.Read).Tell(DocumentOperations.Revisions(s_quote));
        v1.MapGet("/quotes/{key}/revisions/{number}", DocumentRoutes.Revision<Quote>).Needs(Scope.Read)
            .Tell(DocumentOperations.Revision(s_quote));
        v1.MapPost("/quotes/{key}/issue", QuoteIssueRoutes.Issue).Needs(Scope.Write).Tell(QuoteFiguresOperations.Issue);
        v1.MapPost("/quotes/{key}/revise", QuoteRoutes.Revise).Needs(Scope.Write).Tell(Revise);
        v1.MapGet("/quotes/{key}/figures", QuoteFiguresRoutes.Get).Needs(Scope.Read).Tell(QuoteFiguresOperations.Figures);
        v1.MapPost("/quote-figures", QuoteFiguresRoutes.Post).Needs(Scope.Read).Tell(QuoteFiguresOperations.WhatIf);
        v1.MapGet("/quotes/{key}/page", QuotePageRoutes.Get).Needs(Scope.Check).Always(Format.Html).Tell(QuoteFiguresOperations.Page);
        v1.MapGet("/quote-load", QuoteLoadRoutes.Get).Needs(Scope.Read).Tell(QuoteFiguresOperations.Load);
        v1.MapQuoteResults();
    }
}
