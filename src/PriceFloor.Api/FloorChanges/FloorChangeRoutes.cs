using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Storage;

namespace PriceFloor.Api.FloorChanges;

public static class FloorChangeRoutes
{
    public static async Task<Results<JsonAnswer<FloorChangesAnswer>, Problem>> Get(FromQuery<FloorChangeQuery> query, Store store,
        CatalogueReader reader, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        var (cursor, problem) = await CursorOf(asked.Since, store);
        if (cursor is null)
            return problem!;

        var now = await reader.Whole(asked.AsOf);
        if (cursor.UpTo is { } pinned && pinned < now.Position)
            // the rest of an answer is of the same moment
            now = now.Before(await store.ReadAsync(snapshot => snapshot.ChangesBetween(pinned, now.Position)), pinned);
        var (changes, last) = cursor.Since < now.Position
            ? await store.ReadAsync(async snapshot =>
                (await snapshot.ChangesBetween(cursor.Since, now.Position), await snapshot.LastOf(MovedFloors.RestOn, now.Position)))
            : ([], cursor.Since);
        var after = asked.After ?? cursor.After;
        var most = asked.Limit ?? FloorChangeQuery.Most;
        var items = MovedFloors.Between(now.Before(changes, cursor.Since), now, changes, after, mayRead: Caller.Of(context).May(Scope.Read))
            .Take(most + 1).ToList();
        var next = items.Count > most
            ? new FloorCursor(cursor.Since, now.Position, new ListedPriceKey(items[most - 1].Sku, items[most - 1].Channel).ToString())
            : new FloorCursor(long.Max(cursor.Since, last)); // other kinds move nobody
        if (items.Count > most)
            DocumentPage.LinkToNext(context.Request, ("since", await next.Text(store)));
        return JsonAnswer.Of(new FloorChangesAnswer { Items = items[..int.Min(most, items.Count)], Next = await next.Text(store) });
    }

    private static Problem UnknownCursor() => Problem.Invalid([new InputError
    {
        Parameter = "since",
        Code = InputCodes.UnknownCursor,
        Detail = "This cursor is not of the present store: a backup was restored, an older file was put in its place, a document was forgotten, "
            + "or it is another store. Ask once without since, replace everything that you hold with the answer, and follow its next.",
    }]);

    private static async ValueTask<(FloorCursor? Cursor, Problem? Problem)> CursorOf(string? since, Store store)
    {
        if (since is null)
            return (new FloorCursor(0), null);
        if (FloorCursor.IsOne(since))
            return await FloorCursor.Read(since, store) is { } cursor ? (cursor, null) : (null, UnknownCursor());
        return TimeText.ReadTime(since) is { } time
            ? (new FloorCursor(await store.ReadAsync(snapshot => snapshot.PositionAt(Moment.Of(time)))), null)
            : (null, Problem.Invalid([new InputError
            {
                Parameter = "since",
                Code = InputCodes.NotATime,
                Detail = "since must be a time with its offset, written as 2027-03-01T00:00:00Z (a + in a query is written %2B), "
                    + "or the next of an earlier answer.",
            }]));
    }
}

/// <summary>The start: a time, or the cursor of the last answer; the beginning of the store if absent.</summary>
public sealed record FloorChangeQuery(string? Since, int? Limit, string? After, DateTimeOffset? AsOf) : IQuery<FloorChangeQuery>
{
    /// <summary>If no limit is given, an answer has at most this many items.</summary>
    public const int Most = 100_000;

    private const int CursorLength = 200;

    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("since", "A time with its offset, or the next of the last answer; every design if absent.", "string",
            Example: "2027-01-01T00:00:00Z"),
        QueryParameters.LimitOfWhole, QueryParameters.After with { Example = "RB-014/web" }, QueryParameters.AsOf,
    ];

    public static FloorChangeQuery Read(QueryValues values) =>
        new(values.Text("since", CursorLength), values.IntegerOrNull("limit", 1, 1000), values.Text("after", CursorLength), values.Time("asOf"));
}
