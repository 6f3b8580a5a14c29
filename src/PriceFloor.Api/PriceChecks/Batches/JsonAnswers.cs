using System.Collections.Frozen;
using System.IO.Pipelines;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>A JSON object with items and a summary, or a line for each and a last one with the summary.</summary>
public sealed class JsonAnswers(PipeWriter pipe, HttpContext context, bool lines) : BatchAnswers
{
    private readonly ItemWriter _items = new(pipe, lines);

    /// <summary>Keys of the listed prices at which pieces are sold off.</summary>
    public IReadOnlySet<string> Clearing { get; init; } = FrozenSet<string>.Empty;

    public override bool IsFull => _items.IsFull;

    public override ValueTask FlushAsync(CancellationToken cancel) => _items.FlushAsync(cancel);

    public override void End() => _items.End(Summary);

    public override void Dispose()
    {
        _items.Dispose();
        base.Dispose();
    }

    protected override void WriteLine(BatchLine line, Outcome<CheckedPrice> outcome)
    {
        if (outcome.Found is { } found)
        {
            var answer = found.Answer(Caller.Of(context), workings: false, found.Clears is { } clears && Clearing.Contains(clears.Key));
            _items.Write(answer with { Sku = line.Sku, Channel = line.Channel });
        }
        else
            _items.Write(Problem.Of(outcome.Faults).BodyFor(context) with { Sku = Shown(line.Sku), Channel = Shown(line.Channel) });
    }

    /// <summary>If a key of this service is sent in place of a name, it is not echoed.</summary>
    private static string? Shown(string? text) => text is null ? null : KeyText.Hide(text);
}
