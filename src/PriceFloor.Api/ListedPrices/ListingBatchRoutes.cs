using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.PriceChecks;
using PriceFloor.Api.PriceChecks.Batches;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.ListedPrices;

/// <summary>Stores what a shop lists today, all of it or none: the same lines and sheets that can be checked.</summary>
public static class ListingBatchRoutes
{
    public static async Task<IResult> Post(FromQuery<BatchQuery> query, Store store, CatalogueReader reader, DocumentKind<ListedPrice> kind,
        IValidator<PriceCheckRequest> validator, HttpContext context)
    {
        if (query.Value.AsOf is not null)
            return Problem.Unreadable(new InputError
            {
                Parameter = "asOf",
                Code = InputCodes.UnknownParameter,
                Detail = "What is listed today cannot be written into the past; leave asOf out.",
            });
        if (query.Value.NamesSheetParts && BatchBody.FormatOf(context.Request) != Format.Csv)
            return Problem.Invalid([new InputError
            {
                Parameter = "channel",
                Code = FaultCodes.Unexpected,
                Detail = "channel, channelColumn, skuColumn and priceColumn are for sheets; a line of JSON names its own sku, channel and price.",
            }]);
        if (BatchBody.Refused(context.Request) is { } refused)
            return refused;
        var body = await BatchBody.ReadAsync(context);
        return body.Found is not { } sent
            ? Problem.Of(body.Faults)
            : await AllOrNothing.WriteAsync(store, reader, Caller.Of(context), kind, async catalogue => UnderTheirNames(await sent.Lines(
                (text, pointer, line, column) => LineOf(BatchLine.OfJson(text, pointer, line, column, validator), catalogue),
                pipe => OfSheet(pipe, query.Value, catalogue, context.RequestAborted),
                context.RequestAborted), catalogue));
    }

    private static async Task<Outcome<List<PlacedLine<ListedPrice>>>> OfSheet(System.IO.Pipelines.PipeReader pipe, BatchQuery query,
        Catalogue catalogue, CancellationToken cancel)
    {
        using var sheet = new SheetReader(pipe, query.Dialect);
        var (header, unreadable) = await sheet.ReadHeaderAsync(cancel);
        if (unreadable is not null)
            return RequestFault.Unreadable(unreadable);
        var (columns, faults) = SheetColumns.Of(header!, query.Columns, query.Dialect);
        if (columns is null)
            return faults.Select(fault => (Fault)RequestFault.Invalid(fault)).ToList();
        var (rows, lines) = (new SheetCheck(catalogue, columns, header!, query, mayRead: true), new List<PlacedLine<ListedPrice>>());
        while (await sheet.WaitAsync(cancel))
            while (sheet.TryNext(out var row))
                if (!row.IsBlank)
                    lines.Add(Told(LineOf(rows.LineOf(row), catalogue), header!.Names[columns.Price]));
        return lines;
    }

    private static PlacedLine<ListedPrice> Told(PlacedLine<ListedPrice> line, string price) => line.Faults.Count == 0 ? line
        : line with { Faults = [.. line.Faults.Select(fault => EmptyPrice.Told(fault, price))] };

    /// <summary>
    /// A name has a price of its own if the design is listed on the channel under several names, in the store or in the batch. Where a shop knows a
    /// design by one name alone, the price is the design's.
    /// </summary>
    private static Outcome<List<PlacedLine<ListedPrice>>> UnderTheirNames(Outcome<List<PlacedLine<ListedPrice>>> read, Catalogue catalogue)
    {
        if (read.Found is not { } lines)
            return read;
        var names = lines.Where(line => line.Key is not null).Select(line => ListedPriceKey.Of(line.Key!)).ToHashSet()
            .CountBy(key => (key.Sku, key.Channel)).ToDictionary();
        return lines.ConvertAll(line => line.Key is { } text && ListedPriceKey.Of(text) is { Alias: not null } key
            && names[(key.Sku, key.Channel)] == 1 && !catalogue.ListedPrices(key.Sku).ContainsKey(key.Place)
                ? line with { Key = (key with { Alias = null }).ToString() }
                : line);
    }

    private static ListedPriceKey KeyOf(string sku, PriceCheckRequest request) =>
        new(sku, request.Channel, request.Sku == sku ? null : request.Sku);

    private static PlacedLine<ListedPrice> LineOf(BatchLine line, Catalogue catalogue)
    {
        if (line.Faults.Count > 0)
            return PlacedLine<ListedPrice>.Faulty([.. line.Faults.Select(fault => fault.Error!)], line.Pointer, line.Line, line.Column)
                with
            { IsUnreadable = line.Faults[0].Type == ProblemTypes.UnreadableRequest };
        var request = line.Request!;
        var placed = new PlacedLine<ListedPrice>(null, new ListedPrice { Price = request.Price, Currency = request.Currency }, [], line.Pointer,
            line.Line, line.Column);
        var unknown = new List<InputError>();
        // A shop that sends its prices again says nothing of pieces that are sold off at them.
        if (catalogue.DesignNamed(request.Sku) is { } known && catalogue.ListedUnder(request.Sku, known, request.Channel) is { Sound: { } before }
                && before.Price == request.Price)
            placed = placed with { Document = placed.Document! with { Clears = before.Clears } };
        if (catalogue.DesignNamed(request.Sku) is not { } design)
            unknown.Add(placed.Placed(new InputError
            {
                Pointer = "#/sku",
                Code = InputCodes.UnknownDesign,
                Detail = $"There is no design \"{request.Sku}\"; case counts.",
            }));
        else
            placed = placed with { Key = KeyOf(design.Key, request).ToString() };
        if (catalogue.Channel(request.Channel) is null)
            unknown.Add(placed.Placed(new InputError
            {
                Pointer = "#/channel",
                Code = InputCodes.UnknownChannel,
                Detail = $"There is no channel \"{request.Channel}\"; case counts.",
            }));
        return placed with { Faults = unknown };
    }
}
