using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Profiles;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>Quotes: a draft holds what it names; an issued quote holds nothing and never changes.</summary>
public sealed class QuoteDocuments(IValidator<Quote> validator, CatalogueSource catalogues, TimeProvider clock)
    : DocumentKind<Quote>(Kinds.Quote, validator)
{
    public override string? FaultIn(string body) => QuoteText.FaultIn(body);

    public override string DocumentIn(string body) => QuoteText.Find(body)!.Document;

    public override async ValueTask<(Revision Revision, bool IsSettled)> Shown(Snapshot snapshot, Revision revision, DateTimeOffset? asOf)
    {
        if (revision.IsDeletion)
            return (revision, true);
        var quote = await StoredQuote.Of(snapshot, revision, asOf, StoredQuote.DayOf(asOf, clock));
        return (quote.Shown(), await quote.IsSettled(snapshot));
    }

    public override RequestFault? AgainstDeleting(Revision stored) => QuoteText.Find(stored.Body!)?.Issued is null ? null
        : RequestFault.Of(ProblemTypes.Issued, $"The quote \"{stored.Key}\" is issued, so it stays; the verb forget erases it.");

    public override async ValueTask<Outcome<Checked<Quote>>> Check(Writing writing, string key, Quote document, Stored<Quote>? before,
        ProfileAccess access)
    {
        var whole = document with { Lines = QuoteParts.WithProfile(document.Lines, document.Profile) };
        if (before is not null && QuoteText.Find((await writing.Find(Name, key))!.Body!) is { Issued: { } issued } text)
            return WireJson.WriteDocument(whole, issued.Currency) == text.Document
                ? new Checked<Quote>(whole, issued.Currency, [])
                : RequestFault.Of(ProblemTypes.Issued,
                    $"The quote \"{key}\" is issued; POST /v1/quotes/{key}/revise makes a draft of another quote from it.");
        var catalogue = await catalogues.SeenBy(access).Within(writing, NamesIn(whole));
        var found = QuoteParts.Of(catalogue, new(whole.Profile, null), new(whole.Channel, null), whole);
        return found.Found is { } parts ? new Checked<Quote>(whole, parts.Year.Currency, ReferencesOf(whole)) : found.Faults.ToList();
    }

    protected override bool IsSame(string stored, string body) => QuoteText.Find(stored)?.Document == body;

    private static IEnumerable<DocumentName> NamesIn(Quote quote) =>
    [
        new(Kinds.Profile, quote.Profile), new(Kinds.Channel, quote.Channel),
        .. quote.Lines.Select(line => line.Design.Key).OfType<string>().Select(sku => new DocumentName(Kinds.Design, sku)),
    ];

    /// <summary>The profile, the channel, the designs, and the materials of designs of its own.</summary>
    private static List<DocumentName> ReferencesOf(Quote quote) =>
    [
        .. NamesIn(quote),
        .. quote.Lines.SelectMany(line => line.Design.Document?.Materials ?? []).Where(line => line.Material is not null)
            .Select(line => new DocumentName("material", ProfileDocuments.MaterialKey(quote.Profile, line.Material!))),
    ];
}

/// <summary>The rules between the fields of a quote.</summary>
public sealed class QuoteValidator : AbstractValidator<Quote>
{
    public QuoteValidator() => RuleFor(quote => quote).Custom((quote, context) => context.AddAll(QuoteRules.Faults(quote)));
}
