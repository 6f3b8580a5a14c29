using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.FloorChanges;

/// <summary>Since when: a time, or the cursor of the last answer; absent: since there was nothing.</summary>
public sealed record FloorChangeQuery(string? Since, DateTimeOffset? AsOf) : IQuery<FloorChangeQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("since", "A time with its offset, or the next of the last answer; absent: since the store was empty, which gives every design.", "string", Example: "2027-01-01T00:00:00Z"),
        QueryParameters.AsOf,
    ];

    public static FloorChangeQuery Read(QueryValues values) => new(values.Text("since"), values.Time("asOf"));
}

public static class FloorChangeRoutes
{
    private const string Cursor = "p";

    public static Results<JsonAnswer<FloorChangesAnswer>, Problem> Get(FromQuery<FloorChangeQuery> query, Store store, RecordKeeper keeper, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var (since, asOf) = (query.Value.Since, query.Value.AsOf);
        var (after, problem) = since is null ? (0, null) : PositionOf(since, store);
        if (problem is not null)
            return problem;

        var now = keeper.Whole(asOf);
        var upTo = now.Position;
        if (after > upTo && asOf is null)
            return UnknownCursor();
        var changes = after < upTo ? store.Read(snapshot => snapshot.ChangesBetween(after, upTo)) : [];
        var then = now.Before(changes, after);
        return JsonAnswer.Of(new FloorChangesAnswer { Items = [.. MovedFloors.Between(then, now, changes)], Next = CursorAt(long.Max(after, upTo), store) });
    }

    private static string CursorAt(long position, Store store) => string.Create(CultureInfo.InvariantCulture, $"{Cursor}{position}.{store.LifeName}");

    private static Problem UnknownCursor() => Problem.Invalid([new InputError
    {
        Parameter = "since",
        Code = "unknown-cursor",
        Detail = "This cursor is not of the store as it is now: a backup was restored, a document was forgotten, or it is another store. Ask once without since, take the answer in place of all that you hold, and follow its next.",
    }]);

    private static (long Position, Problem? Problem) PositionOf(string since, Store store)
    {
        if (since.StartsWith(Cursor, StringComparison.Ordinal) && long.TryParse(since[Cursor.Length..].Split('.')[0], NumberStyles.None, CultureInfo.InvariantCulture, out var position))
            return since == CursorAt(position, store) ? (position, null) : (0, UnknownCursor());
        return TimeText.ReadTime(since) is { } time
            ? (store.Read(snapshot => snapshot.PositionAt(Moment.Of(time))), null)
            : (0, Problem.Invalid([new InputError { Parameter = "since", Code = "not-a-time", Detail = "since must be a time with its offset, written as 2027-03-01T00:00:00Z (a + in a query is written %2B), or the next of an earlier answer." }]));
    }
}
