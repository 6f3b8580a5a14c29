using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class PriceCheckBatchOperations
{
    private static readonly ExampleFolder s_files = new(typeof(PriceCheckBatchOperations));

    private static readonly Operation PriceCheckBatch = new("checkPrices", "Prices", "Many price checks at once",
        "A JSON array (at most 1000), or NDJSON or CSV without limit; answered in the same format or as Accept says, in order, "
        + "while it is still coming in. A line with a fault is answered in its place by a problem that names line and column. "
        + "A sheet comes back with its own columns unchanged, and with verdict, floorPrice, targetPrice and problem added, "
        + "for a key with the scope read also shortBy. "
        + "All answers come from the documents of one moment. Scopes as for a single check. Scope: verdict.")
    {
        Answer = typeof(PriceCheckBatchAnswer),
        AnswerExample = s_files["checkPrices.answer.json"],
        Bodies =
        [
            new(Format.Json, typeof(PriceCheckRequest[]), s_files["checkPrices.request.json"]),
            new(Format.Ndjson, null, s_files["checkPrices.request.ndjson"]),
            new(Format.Csv, null, s_files["checkPrices.request.csv"]),
        ],
        OtherAnswers = [new(Format.Ndjson, null, s_files["checkPrices.answer.ndjson"]), new(Format.Csv, null, s_files["checkPrices.answer.csv"])],
        Problems = [ProblemTypes.UnknownReference],
    };

    public static void MapPriceCheckBatches(this RouteGroupBuilder v1, BatchSlots slots)
    {
        v1.MapPost("/price-checks/batch", BatchRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Verdict)
            .Offer(Format.Json, Format.Ndjson, Format.Csv).Tell(PriceCheckBatch);
    }
}
