using System.Buffers;
using System.IO.Pipelines;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.Documents.Batches;

/// <summary>The body of a batch that is stored as a whole: read before anything is looked up, then split into lines in its format.</summary>
public sealed class BatchBody
{
    private readonly byte[] _bytes;
    private readonly Format _format;
    private readonly int _most, _mostLines;

    private BatchBody(byte[] bytes, Format format, int most, int mostLines) =>
        (_bytes, _format, _most, _mostLines) = (bytes, format, most, mostLines);

    /// <summary>Whether it is a sheet.</summary>
    public bool IsSheet => _format == Format.Csv;

    /// <summary>The whole body.</summary>
    public ReadOnlyMemory<byte> Bytes => _bytes;

    public static async Task<Outcome<BatchBody>> ReadAsync(HttpContext context, int mostLines = AllOrNothing.MostLines)
    {
        var format = FormatOf(context.Request)!;
        var most = context.RequestServices.GetRequiredService<BodyMemory>().MostOf(context.RequestServices.GetRequiredService<Settings>().BatchBytes);
        if (context.Features.Get<Microsoft.AspNetCore.Http.Features.IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = most + 1L;
        return await RequestBytes.ReadAllAsync(context, most) is { } body ? new BatchBody(body, format, most, mostLines) : TooLarge(most, mostLines);
    }

    /// <summary>The lines, or what is wrong with the body. The bytes are in memory, so this does not wait and can be called again.</summary>
    /// <param name="ofJson">A line from one JSON object: its bytes, pointer, line and column.</param>
    /// <param name="ofSheet">The lines of a sheet, or what is wrong with its header.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<Outcome<List<PlacedLine<T>>>> Lines<T>(Func<byte[], string, long, long, PlacedLine<T>> ofJson,
        Func<PipeReader, Task<Outcome<List<PlacedLine<T>>>>> ofSheet, CancellationToken cancel) where T : class
    {
        var pipe = PipeReader.Create(new ReadOnlySequence<byte>(_bytes));
        var outcome = _format == Format.Csv ? await ofSheet(pipe)
            : _format == Format.Ndjson ? await OfLines(pipe, ofJson, cancel)
            : await OfArray(pipe, ofJson, cancel);
        return outcome.Found?.Count > _mostLines ? TooLarge(_most, _mostLines) : outcome;
    }

    /// <summary>The problem for a format or coding that batches do not support.</summary>
    public static Problem? Refused(HttpRequest request) => ContentCoding.Against(request)
        ?? (FormatOf(request) is null
            ? Problem.Of(ProblemTypes.MediaType, "Send application/json (an array), application/x-ndjson or text/csv, as UTF-8.")
            : null);

    public static Format? FormatOf(HttpRequest request) =>
        new[] { Format.Json, Format.Ndjson, Format.Csv }.FirstOrDefault(format => format.IsSentBy(request));

    private static async Task<Outcome<List<PlacedLine<T>>>> OfLines<T>(PipeReader pipe, Func<byte[], string, long, long, PlacedLine<T>> ofJson,
        CancellationToken cancel) where T : class
    {
        var lines = new List<PlacedLine<T>>();
        using var reader = new NdjsonReader(pipe, JsonLine);
        while (await reader.WaitAsync(cancel))
            while (reader.TryNext(out var line))
                lines.Add(line.Fault is { } fault
                    ? PlacedLine<T>.Faulty([fault with { Pointer = "#" }], "#", line.Number, 1) with { IsUnreadable = true }
                    : ofJson(line.Bytes.ToArray(), "#", line.Number, 1));
        return lines;
    }

    private async Task<Outcome<List<PlacedLine<T>>>> OfArray<T>(PipeReader pipe, Func<byte[], string, long, long, PlacedLine<T>> ofJson,
        CancellationToken cancel) where T : class
    {
        var lines = new List<PlacedLine<T>>();
        using var reader = new JsonArrayReader(pipe, _mostLines, JsonLine);
        while (await reader.WaitAsync(cancel))
            while (reader.TryNext(out var item))
                lines.Add(ofJson(item.Bytes.ToArray(), FormattableString.Invariant($"#/{item.Index}"), item.Line, item.Column));
        return reader.Fault is not { } fault ? lines
            : fault.Code == InputCodes.TooMany ? TooLarge(_most, _mostLines) : RequestFault.Unreadable(fault);
    }

    /// <summary>A design with all its lists full is far smaller.</summary>
    private const int JsonLine = 512 * 1024;

    private static RequestFault TooLarge(int most, int mostLines) => RequestFault.Of(ProblemTypes.TooLarge,
        FormattableString.Invariant($"At most {mostLines} {(mostLines == AllOrNothing.MostLines ? "documents" : "lines")} and {most} bytes ")
        + "are stored together; send them in parts.");
}
