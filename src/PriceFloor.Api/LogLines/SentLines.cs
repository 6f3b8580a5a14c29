using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Statements;

namespace PriceFloor.Api.LogLines;

/// <summary>The lines of a request by their source, as they were sent.</summary>
internal static class SentLines
{
    private static readonly NoRules<MovementRequest> s_movements = new();
    private static readonly NoRules<BenchEntryRequest> s_bench = new();

    /// <summary>The movements of a body.</summary>
    public static Task<Outcome<List<Sent<SentMovement>>>> Movements(BatchBody body, LogBatchQuery query, CancellationToken cancel) => Of(body, query,
        bytes => MovementSheet.Read(bytes, query.Sheet),
        (text, line) =>
        {
            var read = JsonBody<MovementRequest>.Read(text, s_movements);
            return read.Found is { } request ? new Sent<SentMovement>(request.Source ?? query.Source, request.AsSent(line, query.Sheet))
                : new Sent<SentMovement>(query.Source, new SentMovement { Line = line, Fault = FaultOf(read) });
        },
        (line, fault) => new SentMovement { Line = line, Fault = fault }, cancel);

    /// <summary>The bench entries of a body.</summary>
    public static Task<Outcome<List<Sent<SentBenchEntry>>>> Bench(BatchBody body, LogBatchQuery query, CancellationToken cancel) => Of(body, query,
        bytes => BenchSheet.Read(bytes, query.Sheet),
        (text, line) =>
        {
            var read = JsonBody<BenchEntryRequest>.Read(text, s_bench);
            return read.Found is { } request ? new Sent<SentBenchEntry>(request.Source ?? query.Source, request.AsSent(line))
                : new Sent<SentBenchEntry>(query.Source, new SentBenchEntry { Line = line, Fault = FaultOf(read) });
        },
        (line, fault) => new SentBenchEntry { Line = line, Fault = fault }, cancel);

    private delegate Outcome<List<T>> SheetReading<T>(ReadOnlySpan<byte> bytes);

    private static async Task<Outcome<List<Sent<T>>>> Of<T>(BatchBody body, LogBatchQuery query, SheetReading<T> ofSheet,
        Func<byte[], int, Sent<T>> ofJson, Func<int, Code, T> refused, CancellationToken cancel) where T : class
    {
        if (body.IsSheet)
        {
            var sheet = ofSheet(body.Bytes.Span);
            return sheet.Found is { } lines ? lines.ConvertAll(line => new Sent<T>(query.Source, line)) : Unread(sheet.Faults);
        }

        var number = 0;
        var read = await body.Lines<Sent<T>>(
            (text, pointer, line, column) =>
                new PlacedLine<Sent<T>>(null, ofJson(text, pointer == "#" ? (int)line : ++number), [], pointer, line, column),
            _ => throw new InvalidOperationException("A sheet is read by its own reader."), cancel);
        return read.Found is { } placed
            ? placed.ConvertAll(line => line.Document ?? new Sent<T>(query.Source, refused((int)line.Line, line.Faults[0].Code)))
            : read.Faults.ToList();
    }

    /// <summary>What is wrong with a sheet as a whole.</summary>
    private static List<Fault> Unread(IReadOnlyList<Fault> faults) => faults[0].Code == FileCodes.TooMany
        ? [RequestFault.Of(ProblemTypes.TooLarge, faults[0].Detail)]
        : [.. faults.Select(fault => RequestFault.Invalid(new InputError
        {
            Pointer = fault.Pointer.Length == 0 ? "#" : null,
            Parameter = fault.Pointer.Length == 0 ? null : fault.Pointer,
            Code = fault.Code,
            Detail = fault.Detail,
        }))];

    private static Code FaultOf<T>(Outcome<T> outcome) where T : class => RequestFault.Of(outcome.Faults[0]).Error?.Code ?? outcome.Faults[0].Code;
}

/// <summary>A line and who sent it; null if nobody says so.</summary>
internal sealed record Sent<T>(string? Source, T Line);
