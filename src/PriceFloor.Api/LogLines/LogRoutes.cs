using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.LogLines;

/// <summary>What happened is added, corrected, withdrawn and read line by line.</summary>
public static class LogRoutes
{
    public static async Task<IResult> PostMovements(FromQuery<MovementBatchQuery> query, CatalogueReader reader, Store store, HttpContext context)
    {
        if (BatchBody.Refused(context.Request) is { } refused)
            return refused;
        var body = await BatchBody.ReadAsync(context, LogRanges.MostLines);
        var sent = body.Found is { } found ? await SentLines.Movements(found, query.Value.Batch, context.RequestAborted) : body.Faults.ToList();
        if (sent.Found is not { } lines)
            return Problem.Of(sent.Faults);
        var request = new LogRequest(query.Value.Batch, await reader.Whole(null), store, Caller.Of(context));
        return await request.StoreAsync(lines, (line, fault) => line with { Fault = fault }, line => (line.Fault, line.Ref, line.IsCancelled),
            MovementSettling.Settle, (stored, used) => stored.Of(used));
    }

    public static async Task<IResult> PostBench(FromQuery<BenchBatchQuery> query, CatalogueReader reader, Store store, HttpContext context)
    {
        if (BatchBody.Refused(context.Request) is { } refused)
            return refused;
        var body = await BatchBody.ReadAsync(context, LogRanges.MostLines);
        var sent = body.Found is { } found ? await SentLines.Bench(found, query.Value.Batch, context.RequestAborted) : body.Faults.ToList();
        if (sent.Found is not { } lines)
            return Problem.Of(sent.Faults);
        var request = new LogRequest(query.Value.Batch, await reader.Whole(null), store, Caller.Of(context));
        return await request.StoreAsync(lines, (line, fault) => line with { Fault = fault }, line => (line.Fault, line.Ref, line.IsCancelled),
            BenchSettling.Settle, (stored, used) => stored.Of(used));
    }

    public static Task<IResult> DeleteMovement(LineName name, CatalogueReader reader, Store store, HttpContext context) =>
        Delete<MovementLine>(name, reader, store, context);

    public static Task<IResult> DeleteBench(LineName name, CatalogueReader reader, Store store, HttpContext context) =>
        Delete<BenchLine>(name, reader, store, context);

    public static async Task<IResult> ListMovements(FromQuery<LogListQuery> query, CatalogueReader reader, Store store, HttpContext context)
    {
        var catalogue = await reader.Whole(null);
        var (lines, position) = await store.ReadAsync(async snapshot =>
        {
            var end = await snapshot.LogPosition(query.Value.Moment);
            return (await snapshot.Movements(query.Value.Question(catalogue, Caller.Of(context).Access, end.Movements)), end);
        });
        var items = lines.Take(query.Value.Limit).Select(MovementItemAnswer.Of).ToList();
        return Page(context, items, lines.Count > items.Count ? items[^1].Position : null, position);
    }

    public static async Task<IResult> ListBench(FromQuery<BenchListQuery> query, CatalogueReader reader, Store store, HttpContext context)
    {
        var asked = query.Value.List;
        var catalogue = await reader.Whole(null);
        var (lines, position) = await store.ReadAsync(async snapshot =>
        {
            var end = await snapshot.LogPosition(asked.Moment);
            return (await snapshot.BenchEntries(asked.Question(catalogue, Caller.Of(context).Access, end.Bench)), end);
        });
        var items = lines.Take(asked.Limit).Select(BenchItemAnswer.Of).ToList();
        return Page(context, items, lines.Count > items.Count ? items[^1].Position : null, position);
    }

    private static IResult Page<T>(HttpContext context, IReadOnlyList<T> items, long? last, LogPosition position)
    {
        var next = last is { } line ? FormattableString.Invariant($"{line}") : null;
        if (next is not null)
            DocumentPage.LinkToNext(context.Request, next);
        var body = System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(new LogPage<T>(items, next, LogBasisAnswer.Of(position)), WireJson.Options);
        return TaggedBody.Of(body).Answer(context, Format.Json);
    }

    private static async Task<IResult> Delete<T>(LineName name, CatalogueReader reader, Store store, HttpContext context) where T : LogLine
    {
        var caller = Caller.Of(context);
        using var marks = await store.ReadAsync(snapshot => snapshot.Marks());
        var done = await store.AppendAsync(caller, new LogAppend<T>
        {
            Source = name.Source,
            Withdrawn = [marks.OfRef(name.Source, name.Ref)],
            Designs = LogRequest.DesignsOf(await reader.Whole(null), caller.Access),
        });
        return done.Withdrawn[0] ? TypedResults.NoContent()
            : Problem.Of(ProblemTypes.NotFound, "This source has no present line with that ref; case counts, and a slash in it is written %2F.");
    }
}
