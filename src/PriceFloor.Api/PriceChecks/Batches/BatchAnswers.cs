using System.Buffers;
using System.IO.Pipelines;
using System.Text.Json;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>Writes one answer or one problem for each line of a batch, in order.</summary>
public abstract class BatchAnswers : IDisposable
{
    public BatchSummary Summary { get; } = new();

    /// <summary>Time to flush; more is taken all the same.</summary>
    public abstract bool IsFull { get; }

    public void Write(BatchLine line, Outcome<CheckedPrice> outcome)
    {
        Summary.Count(outcome.Found?.Verdict);
        WriteLine(line, outcome);
    }

    public abstract ValueTask FlushAsync(CancellationToken cancel);

    /// <summary>What stands behind the last line.</summary>
    public abstract void End();

    public virtual void Dispose() => GC.SuppressFinalize(this);

    protected abstract void WriteLine(BatchLine line, Outcome<CheckedPrice> outcome);
}

/// <summary>A JSON object with items and a summary, or a line for each and one with the summary.</summary>
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

    /// <summary>A key of this service that stands where a name should is not echoed.</summary>
    private static string? Shown(string? text) => text is null ? null : KeyText.Hide(text);

    private void Append<T>(T value)
    {
        _json.Reset(_bytes);
        JsonSerializer.Serialize(_json, value, WireJson.Options);
        _json.Flush();
    }
}

/// <summary>A sheet of our own for lines that came as JSON.</summary>
public sealed class SheetAnswers(PipeWriter pipe, SheetDialect dialect, Caller caller) : BatchAnswers
{
    private readonly SheetDocument _sheet = new(pipe, dialect, ["sku", "channel", "price", .. SheetColumns.Answers]);

    public override bool IsFull => _sheet.IsFull;

    public override ValueTask FlushAsync(CancellationToken cancel) => _sheet.FlushAsync(cancel);

    public override void End() { }

    public override void Dispose()
    {
        _sheet.Dispose();
        base.Dispose();
    }

    protected override void WriteLine(BatchLine line, Outcome<CheckedPrice> outcome)
    {
        _sheet.Text(line.Request?.Sku).Text(line.Request?.Channel).Number(line.Request?.Price);
        var answer = outcome.Found?.Answer(caller, workings: false);
        _sheet.Text(answer is null ? null : KebabWords.Of(answer.Verdict)).Number(answer?.FloorPrice).Number(answer?.TargetPrice)
            .Text(answer is null ? line.InASheet(outcome.Faults) : null)
            .EndRow();
    }
}
