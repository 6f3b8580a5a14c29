namespace PriceFloor.Storage.Tests.Waiting;

/// <summary>
/// An engine whose every answer comes after its call has returned, as over a network. What takes an answer without awaiting it fails here.
/// </summary>
/// <param name="inner">The engine that answers.</param>
public sealed class WaitingEngine(Engine inner) : Engine
{
    public override bool AnswersAtOnce => false;

    public override long Bytes => inner.Bytes;

    public override bool IsBehind() => inner.IsBehind();

    public override void Dispose() => inner.Dispose();

    protected internal override Opened Open(DateTimeOffset now) => inner.Open(now);

    protected internal override async ValueTask<Session> BeginReading()
    {
        await Task.Yield();
        return new WaitingSession(await inner.BeginReading());
    }

    protected internal override async ValueTask<Session> BeginWriting()
    {
        await Task.Yield();
        return new WaitingSession(await inner.BeginWriting());
    }

    protected internal override async ValueTask<Staging> BeginStaging()
    {
        await Task.Yield();
        return new WaitingStaging(await inner.BeginStaging());
    }

    protected internal override async ValueTask Probe(TimeSpan within, DateTimeOffset now)
    {
        await Task.Yield();
        await inner.Probe(within, now);
    }

    protected internal override void Committed(long position, long number) => inner.Committed(position, number);
}
