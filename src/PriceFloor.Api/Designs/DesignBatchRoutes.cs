using System.IO.Pipelines;
using System.Text;
using System.Text.Json;
using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.Designs;

/// <summary>Exports and imports many designs: an export that comes back unedited changes nothing.</summary>
public static class DesignBatchRoutes
{
    public static async Task<IResult> List(FromQuery<ListQuery> query, FromQuery<DesignSheetQuery> sheet, Store store, CatalogueReader reader,
        DocumentKind<Design> kind, HttpContext context)
    {
        var format = Offers.Of(context).Wanted(context.Request)!;
        if (format == Format.Json)
            return await DocumentRoutes.List(query, store, kind, context.Request);

        // A sheet or lines have all designs, unless a limit is given.
        var limit = context.Request.Query.ContainsKey("limit") ? query.Value.Limit : int.MaxValue;
        var asOf = query.Value.AsOf is { } time ? Moment.Of(time) : (long?)null;
        var found = await store.ReadAsync(snapshot =>
            Caller.Of(context).Access.List(snapshot, kind.Name, "", query.Value.After ?? "", limit, asOf));
        List<Revision> designs = [.. found.Select(kind.Sound)]; // before the first byte, so a damaged one is a problem and not a broken sheet
        context.Response.ContentType = format.ContentType;
        context.Response.Headers.CacheControl = "private, no-cache";
        if (format == Format.Csv)
            await DesignSheet.WriteAsync(context, sheet.Value.Dialect, designs);
        else
            foreach (var revision in designs)
                await AnswerBlocks.InTime(context.Response.Body.WriteAsync(
                    Encoding.UTF8.GetBytes(DocumentText.Of(revision, kind.NamesOf(revision.Key)) + "\n"), context.RequestAborted), context);
        return Results.Empty;
    }

    public static async Task<IResult> Post(FromQuery<DesignSheetQuery> query, Store store, CatalogueReader reader, DocumentKind<Design> kind,
        IValidator<Design> validator, HttpContext context)
    {
        if (BatchBody.Refused(context.Request) is { } refused)
            return refused;
        var body = await BatchBody.ReadAsync(context);
        return body.Found is not { } sent
            ? Problem.Of(body.Faults)
            : await AllOrNothing.WriteAsync(store, reader, Caller.Of(context), kind, catalogue => sent.Lines(
                (text, pointer, line, column) => OfJson(text, pointer, line, column, validator),
                pipe => OfSheet(pipe, query.Value.Dialect, catalogue, validator, context.RequestAborted),
                context.RequestAborted));
    }

    /// <summary>A design of JSON, with its key as a property of its own, as GET gives it.</summary>
    private static PlacedLine<Design> OfJson(byte[] text, string pointer, long line, long column, IValidator<Design> validator)
    {
        var placed = new PlacedLine<Design>(null, null, [], pointer, line, column);
        var body = JsonBody<Design>.Read(text, validator);
        if (body.Faults.Cast<RequestFault>().FirstOrDefault(fault => fault.Type == ProblemTypes.UnreadableRequest) is { Error: { } unreadable })
            return placed with { Faults = [placed.Placed(unreadable) with { Line = line + (unreadable.Line ?? 1) - 1 }], IsUnreadable = true };
        var key = KeyIn(text);
        var against = key is not null ? Keys.FaultIn(key)
            : new InputError { Code = FaultCodes.Required, Detail = "key is missing: each design of a batch needs its key, as GET gives it." };
        return With(placed, key, body, against is null ? null : against with { Pointer = "#/key", Parameter = null });
    }

    /// <summary>The line with its key and document, or with every fault of either.</summary>
    private static PlacedLine<Design> With(PlacedLine<Design> placed, string? key, Outcome<Design> read, InputError? againstKey)
    {
        List<InputError> faults = [.. read.Faults.Cast<RequestFault>().Select(fault => placed.Placed(fault.Error!))];
        if (againstKey is not null)
            faults.Add(placed.Placed(againstKey));
        return faults.Count > 0 ? placed with { Faults = faults } : placed with { Key = key, Document = read.Found };
    }

    /// <summary>The key of a design that was already read: its text is valid JSON, and every string in it is text.</summary>
    private static string? KeyIn(byte[] text)
    {
        using var json = JsonDocument.Parse(JsonText.WithoutMark(text));
        return json.RootElement.TryGetProperty("key", out var key) && key.ValueKind == JsonValueKind.String ? key.GetString() : null;
    }

    private static async Task<Outcome<List<PlacedLine<Design>>>> OfSheet(PipeReader pipe, SheetDialect dialect, Catalogue catalogue,
        IValidator<Design> validator, CancellationToken cancel)
    {
        using var sheet = new SheetReader(pipe, dialect, 512 * 1024);
        var (header, unreadable) = await sheet.ReadHeaderAsync(cancel);
        if (unreadable is not null)
            return RequestFault.Unreadable(unreadable);
        var columns = SheetPlaces.Of(header!, DesignSheet.Sku, DesignSheet.Columns.Select(column => column.Name), "designs", dialect);
        if (columns.Found is not { } places)
            return columns.Faults.ToList();
        var lines = new List<PlacedLine<Design>>();
        while (await sheet.WaitAsync(cancel))
            while (sheet.TryNext(out var row))
                if (!row.IsBlank)
                    lines.Add(LineOf(row, places, dialect, catalogue, validator));
        return lines;
    }

    private static PlacedLine<Design> LineOf(SheetRow row, SheetPlaces places, SheetDialect dialect, Catalogue catalogue,
        IValidator<Design> validator)
    {
        if (row.Fault is { } fault)
            return PlacedLine<Design>.Faulty([fault], null, row.Line, 1) with { IsUnreadable = true };
        if (places.Unheaded(row) is { } stray)
            return PlacedLine<Design>.Faulty([stray], null, row.Line, 1);
        var sku = Encoding.UTF8.GetString(row.Cell(places.Key));
        var (design, wrong) = DesignSheet.Over(catalogue.Design(sku)?.Document, row, places, dialect);
        if (wrong is not null)
            return PlacedLine<Design>.Faulty([wrong], null, row.Line, 1);
        var (line, column) = row.PlaceOf(places.Key);
        var read = design!.Read(validator);
        var isReadable = !read.Faults.Cast<RequestFault>().Any(fault => fault.Type == ProblemTypes.UnreadableRequest);
        var againstKey = isReadable && Keys.FaultIn(sku) is { } fit ? fit with { Pointer = "#/sku", Parameter = null } : null;
        return With(new PlacedLine<Design>(null, null, [], null, line, column), sku, InColumns(read), againstKey);
    }

    /// <summary>A sheet has no column "making": it says which ones it means.</summary>
    private static Outcome<Design> InColumns(Outcome<Design> read) => read.Found is not null ? read
        : read.Faults.Cast<RequestFault>().Select(fault => fault.Error is { Pointer: "#/making" } making && making.Code == FaultCodes.Required
            ? (Fault)RequestFault.Invalid(making with { Detail = NoMaking })
            : fault).ToList();

    private const string NoMaking = "No bench time is given: fill in one of the columns minutesPerPiece, piecesPerDay and piecesPerBenchDay. "
        + "For a design of steps give any minutesPerPiece, and then send the sheet steps: its rows take that figure's place.";
}

/// <summary>How a sheet of designs is written or read.</summary>
public sealed record DesignSheetQuery(SheetDialect Dialect) : IQuery<DesignSheetQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => [SheetQuery.Dialect];

    public static DesignSheetQuery Read(QueryValues values) => new(SheetQuery.DialectOf(values));
}
