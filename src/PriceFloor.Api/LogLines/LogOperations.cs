using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.LogLines;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class LogOperations
{
    private const string Gone = "The line is gone from every answer but those asOf an earlier moment; sent again, it is there again. "
        + "A slash in the ref is written %2F. Scope: log.";

    private const string Known = "A line is known by its source and its ref: the same again is unchanged, other content corrects it, and the former "
        + "line stays for asOf; so a request can simply be sent again. With from and to instead, the request is all that the source has for these days. "
        + "Good lines are stored and bad ones refused by line and code; with from and to all or nothing. At most 200,000 lines. "
        + "Ids are kept as hashes, and columns that no parameter names are not read. Scope: log.";

    private static readonly Operation Movements = new("appendMovements", "Log", "Record what was made, sold, sent, lost",
        "A JSON array, NDJSON or CSV of movements of pieces. " + Known)
    {
        Answer = typeof(LogBatchAnswer),
        Cases = LogCases.Movements,
        Bodies = [new(Format.Json, typeof(MovementRequest[])), new(Format.Ndjson, null), new(Format.Csv, null)],
        BodyWords = "Movements, one after another.",
    };

    private static readonly Operation Bench = new("appendBenchLog", "Log", "Record what was done at the bench",
        "A JSON array, NDJSON or CSV of batches: so many started, so many good, so many minutes. " + Known)
    {
        Answer = typeof(LogBatchAnswer),
        Cases = LogCases.Bench,
        Bodies = [new(Format.Json, typeof(BenchEntryRequest[])), new(Format.Ndjson, null), new(Format.Csv, null)],
        BodyWords = "Bench entries, one after another.",
    };

    private static readonly Operation ListOfMovements = new("listMovements", "Log", "The movements of pieces",
        "In order of position, a page at a time, without the ids that they came with. Scope: read.")
    { Answer = typeof(LogPage<MovementItemAnswer>), Cases = LogCases.ListedMovements, HasTag = true, Good = Tagged };

    private static readonly Operation ListOfBench = new("listBenchLog", "Log", "The bench log",
        "In order of position, a page at a time, without the ids that they came with. Scope: read.")
    { Answer = typeof(LogPage<BenchItemAnswer>), Cases = LogCases.ListedBench, HasTag = true, Good = Tagged };

    private static readonly Operation WithdrawMovement = new("withdrawMovement", "Log", "Withdraw a movement", Gone)
    { Good = Withdrawn };

    private static readonly Operation WithdrawBench = new("withdrawBenchEntry", "Log", "Withdraw a bench entry", Gone)
    { Good = Withdrawn };

    private static Dictionary<int, string> Tagged => new() { [200] = "The answer.", [304] = "The caller already has it." };

    private static Dictionary<int, string> Withdrawn => new() { [204] = "Withdrawn." };

    public static void MapLog(this RouteGroupBuilder v1, BatchSlots slots)
    {
        v1.MapPost("/movements/batch", LogRoutes.PostMovements).AddEndpointFilter(slots).Needs(Scope.Log).Tell(Movements);
        v1.MapGet("/movements", LogRoutes.ListMovements).Needs(Scope.Read).Tell(ListOfMovements);
        v1.MapDelete("/movements/{source}/{ref}", LogRoutes.DeleteMovement).Needs(Scope.Log).Tell(WithdrawMovement);
        v1.MapPost("/bench-log/batch", LogRoutes.PostBench).AddEndpointFilter(slots).Needs(Scope.Log).Tell(Bench);
        v1.MapGet("/bench-log", LogRoutes.ListBench).Needs(Scope.Read).Tell(ListOfBench);
        v1.MapDelete("/bench-log/{source}/{ref}", LogRoutes.DeleteBench).Needs(Scope.Log).Tell(WithdrawBench);
    }
}
