using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>What quotes have beside what all documents share: a list by state, and drafts made from issued ones.</summary>
public static class QuoteRoutes
{
    /// <summary>A page of the quotes that the key sees, of one state if it is named.</summary>
    public static async Task<IResult> List(FromQuery<QuoteListQuery> query, Store store, DocumentKind<Quote> kind, TimeProvider clock,
        HttpContext context)
    {
        var (asOf, limit, after) = query.Value.Page;
        var (access, today) = (Caller.Of(context).Access, StoredQuote.DayOf(asOf, clock));
        var found = await store.ReadAsync(snapshot => Page(snapshot, access, after ?? "", limit + 1, asOf,
            async revision => await StoredQuote.Of(snapshot, kind.Sound(revision), asOf, today) is var quote
                && (query.Value.State ?? quote.State) == quote.State
                ? quote.Shown() : null));
        return DocumentPage.Of([.. found.Take(limit).Select(revision => DocumentText.Of(revision, kind.NamesOf(revision.Key)))],
            found.Count > limit ? found[limit - 1].Key : null, context.Request);
    }

    /// <summary>A draft of a changed offer under another key; the quote that it comes from is superseded.</summary>
    public static async Task<IResult> Revise(PathKey path, JsonBody<QuoteReviseRequest> body, Store store, DocumentKind<Quote> kind,
        HttpContext context)
    {
        if (Keys.FaultIn(body.Value.As) is { } badKey)
            return Problem.Invalid([badKey with { Parameter = null, Pointer = "#/as" }]);
        var read = Preconditions.Of(context.Request);
        if (read.Found is not { } preconditions)
            return Problem.Of(read.Faults);
        var caller = Caller.Of(context);
        var outcome = await store.WriteAsync<Outcome<Revision>>(caller, async writing =>
        {
            var revised = await Revised(writing, path.Text, body.Value.As, (kind, caller.Access, preconditions));
            if (revised.Found is { } made)
                return (await StoredQuote.Of(writing, made, null, DateOnly.FromDateTime(writing.Now.UtcDateTime))).ShownTo(caller);
            writing.Undo();
            return revised;
        });
        if (outcome.Found is not { } draft)
            return Problem.Of(outcome.Faults);
        return DocumentText.Answer(draft, kind.NamesOf(draft.Key), context.Request, createdAt: $"/v1/quotes/{draft.Key}");
    }

    private static async ValueTask<Outcome<Revision>> Revised(Writing writing, string key, string newKey,
        (DocumentKind<Quote> Kind, ProfileAccess Access, Preconditions Preconditions) by)
    {
        if (await by.Access.Seen(writing, writing.Find(Kinds.Quote, key)) is not { } revision)
            return RequestFault.NotFound($"There is no quote \"{key}\".");
        if (by.Preconditions.Forbid(revision.Number))
            return RequestFault.Stale(revision.Number);
        var quote = await StoredQuote.Of(writing, revision, null, DateOnly.FromDateTime(writing.Now.UtcDateTime));
        if (quote.State == QuoteState.Draft)
            return RequestFault.Of(ProblemTypes.NotIssued, $"The quote \"{key}\" is a draft; change it with PUT.");
        if (quote.State == QuoteState.Superseded)
            return RequestFault.Of(ProblemTypes.Issued,
                $"The quote \"{key}\" is superseded by \"{quote.Text.SupersededBy}\" already; revise or change that one.");
        if (await by.Access.Against(writing, Kinds.Quote, newKey) is { } hidden)
            return hidden;
        if (await writing.Find(Kinds.Quote, newKey) is not null)
            return RequestFault.InUse($"There is a quote \"{newKey}\" already; choose another key.", [new Usage(Kinds.Quote, newKey)]);
        var saving = await by.Kind.Save(writing, newKey, quote.Document, by.Access, null);
        if (saving.Found is not { } saved)
            return saving.Faults.ToList();
        await writing.Save(Kinds.Quote, key, (quote.Text with { SupersededBy = newKey }).Write(), []);
        return saved.Revision;
    }

    /// <summary>So many of the quotes after a key that are wanted, as answers have them; null for one that is not.</summary>
    private static async ValueTask<List<Revision>> Page(Snapshot snapshot, ProfileAccess access, string after, int count, DateTimeOffset? asOf,
        Func<Revision, ValueTask<Revision?>> wanted)
    {
        var found = new List<Revision>();
        while (true)
        {
            var page = await access.List(snapshot, Kinds.Quote, "", after, count, asOf is { } at ? Moment.Of(at) : null);
            foreach (var revision in page)
                if (await wanted(revision) is { } one)
                    found.Add(one);
            if (found.Count >= count || page.Count < count)
                return found.Count > count ? found[..count] : found;
            after = page[^1].Key;
        }
    }
}
