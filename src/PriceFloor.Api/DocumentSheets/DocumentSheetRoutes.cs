using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.DocumentSheets;

public static class DocumentSheetRoutes
{
    /// <summary>The sheets and their columns.</summary>
    public static IResult List(HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        return JsonAnswer.Of(new SheetListAnswer(
            [.. SheetsOfDocuments.All.Select(sheet => new SheetInListAnswer(sheet.Name, sheet.About, sheet.Columns))]));
    }

    public static async Task<IResult> Get(string sheet, FromQuery<DocumentSheetQuery> query, Store store, HttpContext context)
    {
        if (SheetsOfDocuments.Find(sheet) is not { } wanted)
            return NotFound(sheet);
        var (access, dialect) = (Caller.Of(context).Access, query.Value.Dialect);
        var bytes = await store.ReadAsync(snapshot => wanted.Written(snapshot, access, query.Value.AsOf, dialect, context.RequestServices));
        return TaggedBody.Of(bytes).Answer(context, Format.Csv);
    }

    public static async Task<IResult> Put(string sheet, FromQuery<DocumentSheetWriteQuery> query, CatalogueReader reader, HttpContext context)
    {
        if (SheetsOfDocuments.Find(sheet) is not { } wanted)
            return NotFound(sheet);
        if (BatchBody.FormatOf(context.Request) != Format.Csv)
            return Problem.Of(ProblemTypes.MediaType, "Send the sheet as text/csv, as UTF-8.");
        if (BatchBody.Refused(context.Request) is { } refused)
            return refused;
        var read = Preconditions.Of(context.Request);
        if (read.Found is not { } preconditions)
            return Problem.Of(read.Faults);
        var (body, dialect) = (await BatchBody.ReadAsync(context), query.Value.Dialect);
        return body.Found is { } sent
            ? await wanted.StoreAsync(sent, dialect, reader, writing => Stale(wanted, writing, preconditions, dialect, context), context)
            : Problem.Of(body.Faults);
    }

    /// <summary>With If-Match, nothing is stored over what somebody else has changed since the sheet was fetched.</summary>
    private static async ValueTask<Fault?> Stale(DocumentSheet sheet, Writing writing, Preconditions preconditions, SheetDialect dialect,
        HttpContext context)
    {
        if (context.Request.Headers.IfMatch.Count == 0)
            return null;
        var now = TaggedBody.Of(await sheet.Written(writing, Caller.Of(context).Access, null, dialect, context.RequestServices));
        return preconditions.IsStale(now.Tag)
            ? RequestFault.Of(ProblemTypes.StaleRevision,
                $"The sheet has changed since then; its ETag is {now.Tag} now. Fetch it again and repeat your changes.")
            : null;
    }

    private static Problem NotFound(string name) => Problem.Of(ProblemTypes.NotFound,
        $"There is no sheet \"{name}\"; there are {string.Join(", ", SheetsOfDocuments.All.Select(sheet => sheet.Name))}.");
}

/// <summary>How a sheet is written.</summary>
public sealed record DocumentSheetQuery(SheetDialect Dialect, DateTimeOffset? AsOf) : IQuery<DocumentSheetQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [SheetQuery.Dialect, QueryParameters.AsOf];

    public static DocumentSheetQuery Read(QueryValues values) => new(SheetQuery.DialectOf(values), values.Time("asOf"));
}

/// <summary>How a sheet is read.</summary>
public sealed record DocumentSheetWriteQuery(SheetDialect Dialect) : IQuery<DocumentSheetWriteQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [SheetQuery.Dialect];

    public static DocumentSheetWriteQuery Read(QueryValues values) => new(SheetQuery.DialectOf(values));
}
