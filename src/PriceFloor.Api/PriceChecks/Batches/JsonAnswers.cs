using System.Buffers;
using System.IO.Pipelines;
using System.Text.Json;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>A JSON object with items and a summary, or a line for each and a last one with the summary.</summary>
public sealed class JsonAnswers : BatchAnswers
{
    private const int Full = 32 * 1024;

    private readonly ArrayBufferWriter<byte> _bytes = new(2 * Full);
    private readonly PipeWriter _pipe;
    private readonly HttpContext _context;
    private readonly bool _lines;
    private readonly Utf8JsonWriter _json;
    private bool _first = true;

    public JsonAnswers(PipeWriter pipe, HttpContext context, bool lines)
    {
        (_pipe, _context, _lines) = (pipe, context, lines);
        _json = new Utf8JsonWriter(_bytes, new JsonWriterOptions { Encoder = WireJson.Options.Encoder, SkipValidation = true });
        if (!lines)
            _bytes.Write("{\"items\":["u8);
    }

    public override bool IsFull => _bytes.WrittenCount >= Full;

    public override async ValueTask FlushAsync(CancellationToken cancel)
    {
        if (_bytes.WrittenCount == 0)
            return;
        await _pipe.WriteAsync(_bytes.WrittenMemory, cancel);
        _bytes.ResetWrittenCount();
    }

    public override void End()
    {
        _bytes.Write(_lines ? "{\"summary\":"u8 : "],\"summary\":"u8);
        Append(Summary);
        _bytes.Write(_lines ? "}\n"u8 : "}"u8);
    }

    public override void Dispose()
    {
        _json.Dispose();
        base.Dispose();
    }

    protected override void WriteLine(BatchLine line, Outcome<CheckedPrice> outcome)
    {
        if (!_first && !_lines)
            _bytes.Write(","u8);
        _first = false;
        if (outcome.Found is { } found)
            Append(found.Answer(Caller.Of(_context), workings: false) with { Sku = line.Sku, Channel = line.Channel });
        else
            Append(Problem.Of(outcome.Faults).BodyFor(_context) with { Sku = Shown(line.Sku), Channel = Shown(line.Channel) });
        if (_lines)
            _bytes.Write("\n"u8);
    }

    /// <summary>If a key of this service is sent in place of a name, it is not echoed.</summary>
    private static string? Shown(string? text) => text is null ? null : KeyText.Hide(text);

    private void Append<T>(T value)
    {
        _json.Reset(_bytes);
        JsonSerializer.Serialize(_json, value, WireJson.Options);
        _json.Flush();
    }
}
