using System.Buffers;
using System.IO.Pipelines;
using System.Text.Json;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>Items and a summary, written one by one: a JSON object, or a line for each and a last one with the summary.</summary>
public sealed class ItemWriter : IDisposable
{
    private const int Full = 32 * 1024;

    private readonly ArrayBufferWriter<byte> _bytes = new(2 * Full);
    private readonly PipeWriter _pipe;
    private readonly bool _lines;
    private readonly Utf8JsonWriter _json;
    private bool _first = true;

    public ItemWriter(PipeWriter pipe, bool lines)
    {
        (_pipe, _lines) = (pipe, lines);
        _json = new Utf8JsonWriter(_bytes, new JsonWriterOptions { Encoder = WireJson.Options.Encoder, SkipValidation = true });
        if (!lines)
            _bytes.Write("{\"items\":["u8);
    }

    /// <summary>The size at which to flush; a larger answer is still taken.</summary>
    public bool IsFull => _bytes.WrittenCount >= Full;

    public async ValueTask FlushAsync(CancellationToken cancel)
    {
        if (_bytes.WrittenCount == 0)
            return;
        await _pipe.WriteAsync(_bytes.WrittenMemory, cancel);
        _bytes.ResetWrittenCount();
    }

    /// <summary>Writes the next item.</summary>
    public void Write<T>(T item)
    {
        if (!_first && !_lines)
            _bytes.Write(","u8);
        _first = false;
        Append(item);
        if (_lines)
            _bytes.Write("\n"u8);
    }

    /// <summary>Writes the summary and the end.</summary>
    public void End<T>(T summary)
    {
        _bytes.Write(_lines ? "{\"summary\":"u8 : "],\"summary\":"u8);
        Append(summary);
        _bytes.Write(_lines ? "}\n"u8 : "}"u8);
    }

    public void Dispose() => _json.Dispose();

    private void Append<T>(T value)
    {
        _json.Reset(_bytes);
        JsonSerializer.Serialize(_json, value, WireJson.Options);
        _json.Flush();
    }
}
