using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents;
using PriceFloor.Api.DocumentSheets;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Api.Workbooks.Files;
using PriceFloor.Storage;

namespace PriceFloor.Api.Workbooks;

/// <summary>The whole studio as one workbook, there and back.</summary>
public static class WorkbookRoutes
{
    /// <summary>How much larger than what may be sent a workbook may be when it is unpacked.</summary>
    private const int Unpacked = 4;

    public static async Task<IResult> Get(FromQuery<ReadQuery> query, Store store, WorkbookWords words, HttpContext context)
    {
        var access = Caller.Of(context).Access;
        var sheets = await store.ReadAsync(snapshot => Sheets(snapshot, access, query.Value.AsOf, context.RequestServices));
        return await WorkbookText.Of(sheets, await words.Explanations) is { } bytes
            ? TaggedBody.Of(bytes).Answer(context, Format.Xlsx)
            : Problem.CannotCompute(FaultCodes.TooLarge, "A cell or a sheet would be larger than a spreadsheet takes; read the documents as JSON.");
    }

    public static async Task<IResult> Post(FromQuery<DocumentSheetWriteQuery> query, Store store, CatalogueReader reader, WorkbookWords words,
        HttpContext context)
    {
        if (ContentCoding.Against(context.Request) is { } coded)
            return coded;
        if (!Format.Xlsx.IsSentBy(context.Request))
            return Problem.Of(ProblemTypes.MediaType, $"Send the workbook (.xlsx) as {Format.Xlsx.MediaType}.");
        var preconditions = Preconditions.Of(context.Request);
        if (preconditions.Found is null)
            return Problem.Of(preconditions.Faults);
        var (memory, settings) = (context.RequestServices.GetRequiredService<BodyMemory>(), context.RequestServices.GetRequiredService<Settings>());
        var most = memory.MostOf(settings.BatchBytes);
        if (context.Features.Get<Microsoft.AspNetCore.Http.Features.IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = most + 1L;
        if (await RequestBytes.ReadAllAsync(context, most) is not { } body)
            return Problem.Of(ProblemTypes.TooLarge, FormattableString.Invariant($"The workbook is larger than {most} bytes."));
        var unpacked = memory.MostOf((int)long.Min((long)Unpacked * settings.BatchBytes, int.MaxValue));
        var read = WorkbookFile.Read(body, unpacked, WorkbookDrafts.IsRead);
        return read.Found is { } workbook
            ? await StoreAsync(workbook, query.Value.Dialect, store, reader, writing => Stale(writing, preconditions.Value, words, context), context)
            : Problem.Of(read.Faults);
    }

    private static async Task<IResult> StoreAsync(IReadOnlyList<WorkbookSheet> workbook, SheetDialect dialect, Store store, CatalogueReader reader,
        Func<Writing, ValueTask<Fault?>> guard, HttpContext context)
    {
        var caller = Caller.Of(context);
        var catalogue = await reader.Whole(null);
        var laid = new WorkbookDrafts(workbook, catalogue, dialect, context.RequestServices);
        if (laid.Problem is { } unfit)
            return unfit;
        var (drafts, problem) = await store.WriteAsync(caller, async writing =>
        {
            var now = catalogue.Point.IsAt(await writing.Point()) ? laid
                : new WorkbookDrafts(workbook, await reader.WholeWithin(writing), dialect, context.RequestServices);
            var against = await guard(writing) is { } stale ? Problem.Of([stale]) : now.Problem ?? await now.Save(writing, caller.Access);
            if (against is not null)
                writing.Undo();
            return (now, against);
        });
        return problem ?? (IResult)JsonAnswer.Of(drafts.Answer);
    }

    /// <summary>With If-Match, nothing is stored over what somebody else has changed since the workbook was fetched.</summary>
    private static async ValueTask<Fault?> Stale(Writing writing, Preconditions preconditions, WorkbookWords words, HttpContext context)
    {
        if (context.Request.Headers.IfMatch.Count == 0)
            return null;
        var sheets = await Sheets(writing, Caller.Of(context).Access, null, context.RequestServices);
        var tag = await WorkbookText.Of(sheets, await words.Explanations) is { } bytes ? TaggedBody.Of(bytes).Tag : "";
        return preconditions.IsStale(tag)
            ? RequestFault.Of(ProblemTypes.StaleRevision,
                $"The studio has changed since then; the workbook's ETag is {tag} now. Fetch it again and repeat your changes.")
            : null;
    }

    private static async ValueTask<IReadOnlyList<(DocumentSheet, IReadOnlyList<SheetLine>)>> Sheets(Snapshot snapshot, ProfileAccess access,
        DateTimeOffset? asOf, IServiceProvider services)
    {
        var sheets = new List<(DocumentSheet, IReadOnlyList<SheetLine>)>();
        foreach (var sheet in SheetsOfDocuments.All)
            sheets.Add((sheet, await sheet.Lines(snapshot, access, asOf, services)));
        return sheets;
    }
}

/// <summary>What the headings of workbooks say: read from the contract when the first workbook is asked for.</summary>
public sealed class WorkbookWords(IServiceProvider services)
{
    private readonly Lazy<Task<IReadOnlyDictionary<string, string>>> _explanations = new(() => WorkbookGuide.Explanations(services));

    public Task<IReadOnlyDictionary<string, string>> Explanations => _explanations.Value;
}
