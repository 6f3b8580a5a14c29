using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>What is stored about an issued quote, under the quote's key.</summary>
public abstract class QuoteResultDocuments<T>(string name, IValidator<T> validator) : DocumentKind<T>(name, validator) where T : class
{
    public override async ValueTask<Outcome<Checked<T>>> Check(Writing writing, string key, T document, Stored<T>? before, ProfileAccess access)
    {
        if (await access.Seen(writing, writing.Find(Kinds.Quote, key)) is not { } revision)
            return RequestFault.NotFound($"There is no quote \"{key}\".");
        var quote = await StoredQuote.Of(writing, revision, null, DateOnly.FromDateTime(writing.Now.UtcDateTime));
        return quote.Text.Issued is not { } issued
            ? RequestFault.Of(ProblemTypes.NotIssued, $"The quote \"{key}\" is a draft; POST /v1/quotes/{key}/issue issues it.")
            : quote.State == QuoteState.Superseded && before is null
                ? RequestFault.Of(ProblemTypes.Issued, $"The quote \"{key}\" is superseded by \"{quote.Text.SupersededBy}\"; store it there.")
            : new Checked<T>(Complete(document, before, writing.Now), issued.Currency, []);
    }

    /// <summary>The document with everything filled in.</summary>
    protected virtual T Complete(T document, Stored<T>? before, DateTimeOffset now) => document;
}

/// <summary>The outcome of an issued quote.</summary>
public sealed class QuoteOutcomeDocuments(IValidator<QuoteOutcome> validator) : QuoteResultDocuments<QuoteOutcome>(Kinds.QuoteOutcome, validator)
{
    /// <summary>The day that is left out is today's; the same outcome sent again keeps its day.</summary>
    protected override QuoteOutcome Complete(QuoteOutcome document, Stored<QuoteOutcome>? before, DateTimeOffset now) => document with
    {
        On = document.On ?? (before?.Sound is { } stored && stored.Result == document.Result ? stored.On : null)
            ?? DateOnly.FromDateTime(now.UtcDateTime),
    };
}

/// <summary>What the work of an issued quote really took.</summary>
public sealed class QuoteActualDocuments(IValidator<QuoteActual> validator) : QuoteResultDocuments<QuoteActual>(Kinds.QuoteActual, validator);
