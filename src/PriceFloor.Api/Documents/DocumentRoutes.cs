using System.Globalization;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>The handlers that all kinds of documents share: pages, reads, conditional writes, deletes that hide, revisions.</summary>
public static class DocumentRoutes
{
    public static Task<IResult> List<T>(FromQuery<ListQuery> query, Store store, DocumentKind<T> kind, HttpRequest request) where T : class =>
        ListBelow("", query, store, kind, request);

    /// <summary>A page of the documents whose keys start with a prefix.</summary>
    public static async Task<IResult> ListBelow<T>(string prefix, FromQuery<ListQuery> query, Store store, DocumentKind<T> kind,
        HttpRequest request) where T : class
    {
        var page = query.Value;
        var found = await store.ReadAsync(async snapshot => await Shown(snapshot, kind, page.AsOf,
            await AccessOf(request).List(snapshot, kind.Name, prefix, prefix + page.After, page.Limit + 1, AsOf(page.AsOf)), page.Limit));
        return DocumentPage.Of([.. found.Take(page.Limit).Select(revision => DocumentText.Of(revision, kind.NamesOf(revision.Key)))],
            found.Count > page.Limit ? found[page.Limit - 1].Key[prefix.Length..] : null, request);
    }

    public static async Task<IResult> Get<T>(PathKey path, FromQuery<ReadQuery> query, Store store, DocumentKind<T> kind, HttpRequest request)
        where T : class =>
        await store.ReadAsync(snapshot => ShownIfSeen(snapshot, kind, snapshot.Find(kind.Name, path.Text, AsOf(query.Value.AsOf)), query.Value.AsOf,
            request)) is { Revision: { } shown, IsSettled: var isSettled }
            ? DocumentText.Answer(shown, kind.NamesOf(path.Text), request, isSettled: isSettled)
            : Problem.Of(ProblemTypes.NotFound, $"There is no {kind.Name} \"{path.Text}\"{(query.Value.AsOf is null ? "" : " at that time")}.");

    public static async Task<IResult> Put<T>(PathKey path, JsonBody<T> body, Store store, DocumentKind<T> kind, HttpContext context) where T : class
    {
        if (path.Chosen.Select(Keys.FaultIn).FirstOrDefault(fault => fault is not null) is { } badKey)
            return Problem.Invalid([badKey]);
        var read = Preconditions.Of(context.Request);
        if (read.Found is not { } preconditions)
            return Problem.Of(read.Faults);

        var caller = Caller.Of(context);
        var outcome = await store.WriteAsync<Outcome<Saved>>(caller, async writing =>
        {
            if (await caller.Access.Against(writing, kind.Name, path.Text) is { } hidden)
                return hidden;
            var stored = await writing.Find(kind.Name, path.Text);
            if (preconditions.Forbid(stored?.Number))
                return RequestFault.Stale(stored?.Number);
            var saving = await kind.Save(writing, path.Text, body.Value, caller.Access, stored);
            return saving.Found is { } done ? done with { Revision = (await kind.Shown(writing, done.Revision, null)).Revision } : saving;
        });
        return outcome.Found is { } saved
            ? DocumentText.Answer(saved.Revision, kind.NamesOf(path.Text), context.Request, created: saved.Before is null)
            : Problem.Of(outcome.Faults);
    }

    public static async Task<IResult> Delete<T>(PathKey path, Store store, DocumentKind<T> kind, HttpContext context) where T : class
    {
        var read = Preconditions.Of(context.Request);
        if (read.Found is not { } preconditions)
            return Problem.Of(read.Faults);

        var fault = await store.WriteAsync(Caller.Of(context), async writing =>
        {
            if (await AccessOf(context.Request).Seen(writing, writing.Find(kind.Name, path.Text)) is not { } stored)
                return RequestFault.NotFound($"There is no {kind.Name} \"{path.Text}\".");
            if (await AccessOf(context.Request).Against(writing, kind.Name, path.Text) is { } shared)
                return shared;
            if (preconditions.Forbid(stored.Number))
                return RequestFault.Stale(stored.Number);
            if (kind.AgainstDeleting(stored) is { } settled)
                return settled;
            if (await writing.UsersOf(kind.Name, path.Text) is { Count: > 0 } users)
                return RequestFault.InUse($"The {kind.Name} \"{path.Text}\" is still used.",
                    [.. users.Select(user => new Usage(user.Kind, user.Key))]);
            await kind.Cascade(writing, path.Text);
            await writing.Delete(kind.Name, path.Text);
            return null;
        });
        return fault is null ? TypedResults.NoContent() : Problem.Of([fault]);
    }

    public static async Task<IResult> Revisions<T>(PathKey path, FromQuery<ListQuery> query, Store store, DocumentKind<T> kind,
        HttpRequest request) where T : class
    {
        var page = query.Value;
        long after = 0;
        if (page.After is { } text && !long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out after))
            return Problem.Invalid(
                [new InputError { Parameter = "after", Code = FaultCodes.OutOfRange, Detail = "after must be the number of a revision." }]);
        var (found, isThere) = await store.ReadAsync(async snapshot =>
        {
            var history = await HistoryOf(snapshot, kind.Name, path.Text, after, page, request);
            return history with { Found = await Shown(snapshot, kind, page.AsOf, history.Found, page.Limit) };
        });
        if (!isThere)
            return Problem.Of(ProblemTypes.NotFound, $"There never was a {kind.Name} \"{path.Text}\".");
        return DocumentPage.Of([.. found.Take(page.Limit).Select(revision => DocumentText.Of(revision, kind.NamesOf(path.Text)))],
            found.Count > page.Limit ? found[page.Limit - 1].Number.ToString(CultureInfo.InvariantCulture) : null, request);
    }

    public static async Task<IResult> Revision<T>(PathKey path, string number, FromQuery<ReadQuery> query, Store store, DocumentKind<T> kind,
        HttpRequest request) where T : class =>
            long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            && await store.ReadAsync(snapshot => ShownIfSeen(snapshot, kind, snapshot.RevisionOf(kind.Name, path.Text, n), query.Value.AsOf,
                request)) is { Revision: { } shown, IsSettled: var isSettled }
                ? DocumentText.Answer(shown, kind.NamesOf(path.Text), request, isSettled: isSettled)
                : Problem.Of(ProblemTypes.NotFound, $"There is no revision {number} of a {kind.Name} \"{path.Text}\".");

    /// <summary>A revision as answers have it, if there was one then and the key sees it.</summary>
    private static async ValueTask<(Revision? Revision, bool IsSettled)> ShownIfSeen<T>(Snapshot snapshot, DocumentKind<T> kind,
        ValueTask<Revision?> question, DateTimeOffset? asOf, HttpRequest request) where T : class =>
            await AccessOf(request).Seen(snapshot, question) is { } revision && !(revision.SavedAtTime > asOf)
                ? await kind.Shown(snapshot, kind.Sound(revision), asOf)
                : default((Revision?, bool));

    /// <summary>The revisions of a page as answers have them; the one behind it only says that there are more.</summary>
    private static async ValueTask<List<Revision>> Shown<T>(Snapshot snapshot, DocumentKind<T> kind, DateTimeOffset? asOf, List<Revision> found,
        int limit) where T : class
    {
        var shown = new List<Revision>();
        foreach (var revision in found.Take(limit))
            shown.Add((await kind.Shown(snapshot, kind.Sound(revision), asOf)).Revision);
        return [.. shown, .. found.Skip(limit)];
    }

    /// <summary>The page of a history, and whether there ever was such a document.</summary>
    private static async ValueTask<(List<Revision> Found, bool IsThere)> HistoryOf(Snapshot snapshot, string kind, string key, long after,
        ListQuery page, HttpRequest request)
    {
        var found = await AccessOf(request).History(snapshot, kind, key, after, page.Limit + 1, AsOf(page.AsOf));
        return (found, found.Count > 0 || (after > 0 && await AccessOf(request).Seen(snapshot, snapshot.Newest(kind, key)) is not null));
    }

    private static ProfileAccess AccessOf(HttpRequest request) => Caller.Of(request.HttpContext).Access;

    private static long? AsOf(DateTimeOffset? time) => time is { } at ? Moment.Of(at) : null;
}
