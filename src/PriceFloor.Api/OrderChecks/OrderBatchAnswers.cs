using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Http;
using PriceFloor.Api.PriceChecks.Batches;

namespace PriceFloor.Api.OrderChecks;

/// <summary>Writes one answer or one problem for each order of a batch, in order, and counts them.</summary>
internal sealed class OrderBatchAnswers(ItemWriter items, Caller caller, HttpContext context, bool workings) : IDisposable
{
    private long _meetsFloor, _belowFloor, _unanswered;

    /// <summary>True if it is time to flush.</summary>
    public bool IsFull => items.IsFull;

    public void Write(OrderBatchLine line, Catalogue catalogue)
    {
        var outcome = line.Checked(catalogue, caller.May(Scope.Read));
        _meetsFloor += outcome.Found?.Order?.Verdict == OrderVerdict.MeetsFloor ? 1 : 0;
        _belowFloor += outcome.Found?.Order?.Verdict == OrderVerdict.BelowFloor ? 1 : 0;
        _unanswered += outcome.Found is null ? 1 : 0;
        if (outcome.Found is { } found)
            items.Write(found.Answer(caller, workings) with { Channel = line.Channel });
        else
            items.Write(Problem.Of(outcome.Faults).BodyFor(context) with { Channel = line.Channel is { } sent ? KeyText.Hide(sent) : null });
    }

    public ValueTask FlushAsync(CancellationToken cancel) => items.FlushAsync(cancel);

    public void End() => items.End(new OrderSummary(_meetsFloor, _belowFloor, _unanswered));

    public void Dispose() => items.Dispose();
}
