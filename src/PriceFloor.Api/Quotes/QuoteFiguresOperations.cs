using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Quotes;

/// <summary>Descriptions of what is computed from quotes.</summary>
internal static class QuoteFiguresOperations
{
    private static readonly ExampleFolder s_files = new(typeof(QuoteFiguresOperations));

    internal static readonly Operation Issue = new("issueQuote", "Quotes", "Issue a quote",
        "Makes the draft an offer: its figures of this moment become part of it as text and never change again, whatever becomes of costs, designs "
        + "or this service. It needs price and validUntil, and from then on holds nothing that it names. Issued again it answers the same. "
        + "A key that may not read is told the state alone. Scope: write.")
    {
        Answer = typeof(Quote),
        AnswerOtherwise = typeof(QuoteStepAnswer),
        HasRevision = true,
        AnswerExample = s_files["issueQuote.answer.json"],
        Problems = [ProblemTypes.StaleRevision, ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    internal static readonly Operation Figures = new("getQuoteFigures", "Quotes", "What a quote must bring in",
        "The floor of the whole order, the total that brings it in, hours, materials, what is paid out before the money comes in, and what the price "
        + "leaves. Of an issued quote they are the issued figures, word for word, and moved says what they would be now. Workings are given of "
        + "drafts. Scope: read.")
    {
        Answer = typeof(QuoteFiguresAnswer),
        AnswerExample = s_files["getQuoteFigures.answer.json"],
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    internal static readonly Operation WhatIf = new("computeQuoteFigures", "Quotes", "What if: the figures of a quote that is not stored",
        "The same answer for a quote that comes with the request, in which profile, channel and designs are documents or keys of stored ones. "
        + "Nothing is stored. A line of a stored design with learning {} takes its rate and the pieces made before from the design's bench log. "
        + "Scope: read.")
    {
        Answer = typeof(QuoteFiguresAnswer),
        Cases = QuoteCases.Figures,
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    internal static readonly Operation Page = new("getQuotePage", "Quotes", "The client's page",
        "The quote as one page to send or to print: what is offered, the price, when it is paid, how long it is valid. No floor, no hours, no "
        + "materials and not the reference \"to\", whatever the key may read. A draft is marked as one and needs a key that may read. Scope: check.")
    {
        OtherAnswers = [new(Format.Html, null, s_files["getQuotePage.answer.html"])],
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = "A page.", [304] = "The caller already has it." },
    };

    internal static readonly Operation Load = new("getQuoteLoad", "Quotes", "The hours of accepted quotes",
        "The quotes that are accepted and not done, and the hours that were quoted for them: what a plan keeps back. Scope: read.")
    {
        Answer = typeof(QuoteLoadAnswer),
        AnswerExample = s_files["getQuoteLoad.answer.json"],
        Problems = [ProblemTypes.UnknownReference],
    };
}
