using Microsoft.AspNetCore.Http.HttpResults;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence;

/// <summary>From sheets of what was sold and made to the numbers that are guessed. The lines stay in this request's memory.</summary>
public static class EvidenceRoutes
{
    public static async Task<Results<JsonAnswer<EvidenceAnswer>, Problem>> Post(FromQuery<EvidenceQuery> query, CatalogueReader reader, Store store,
        HttpContext context)
    {
        if (ContentCoding.Against(context.Request) is { } coded)
            return coded;
        var body = await StatementBody.ReadAsync(context, EvidenceQuery.MovementsPart);
        if (body.Found is not { } files)
            return Problem.Of(body.Faults);
        context.Response.Headers.CacheControl = "no-store";
        var read = EvidenceSheets.Read(files, query.Value);
        if (read.Found is not { } sheets)
            return Problem.Of(read.Faults);
        try
        {
            var lines = await reader.Read(query.Value.AsOf, catalogue => EvidenceLines.Of(catalogue, sheets, query.Value));
            if (lines.Found is not { } placed)
                return Problem.Of(lines.Faults);
            var history = await store.ReadAsync(snapshot =>
                StoredHistory.OfAsync(snapshot, placed.DesignsOfBench, placed.PricesToLookUp, query.Value.AsOf));
            return JsonAnswer.Of(placed.Answer(query.Value, history));
        }
        catch (Exception e) when (e is OverflowException or DivideByZeroException)
        {
            return Problem.CannotCompute(FaultCodes.TooLarge,
                "The lines add up to more than can be exact; look for a column that does not have what it is named for.");
        }
    }
}
