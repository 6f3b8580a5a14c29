using System.Collections.Frozen;
using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Api.Telemetry;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>
/// Many price checks in one request, each answered in its place. All of them use the documents of one moment; a line with a fault is answered by a
/// problem and never stops the rest.
/// </summary>
public static class BatchRoutes
{
    public static async Task<IResult> Post(FromQuery<BatchQuery> query, CatalogueReader reader, ClearingPrices clearing,
        IValidator<PriceCheckRequest> validator, Settings settings, PutBy putBy, ServiceCounts counts, HttpContext context)
    {
        if (BatchBody.Refused(context.Request) is { } refused)
            return refused;
        var given = BatchBody.FormatOf(context.Request)!;
        if (given != Format.Csv && query.Value.NamesSheetParts)
            return Problem.Invalid([new InputError
            {
                Parameter = "channel",
                Code = FaultCodes.Unexpected,
                Detail = "channel, channelColumn, skuColumn and priceColumn are for sheets; a line of JSON names its own sku, channel and price.",
            }]);
        if (putBy.IsFull)
            return Problem.Busy();
        var catalogue = await reader.Whole(query.Value.AsOf);
        if (UnknownChannel(query.Value, catalogue) is { } unknown)
            return unknown;

        // By default a sheet is answered as a sheet, and lines as lines.
        var wanted = context.Request.Headers.Accept.Count == 0 || context.Request.Headers.Accept.ToString() == "*/*" ? given
            : Offers.Of(context).Wanted(context.Request)!;
        var batch = new Batch(query.Value, catalogue, validator, Caller.Of(context), context, wanted, settings.DataFolder, putBy, counts)
        {
            // A sheet has no column for it.
            Clearing = wanted == Format.Csv ? FrozenSet<string>.Empty : await clearing.OpenIn(catalogue, query.Value.AsOf),
        };
        return given == Format.Csv ? await batch.OfSheet() : given == Format.Ndjson ? await batch.OfLines() : await batch.OfArray(settings.BodyBytes);
    }

    /// <summary>The problem of a query that puts every row on a channel which is not there; null if there is none.</summary>
    internal static Problem? UnknownChannel(BatchQuery query, Catalogue catalogue) =>
        query.Channel is { } channel && catalogue.Channel(channel) is null
            ? Problem.UnknownReference([new InputError
            {
                Parameter = "channel",
                Code = InputCodes.UnknownChannel,
                Detail = $"There is no channel \"{channel}\"; case counts.",
            }])
            : null;
}
