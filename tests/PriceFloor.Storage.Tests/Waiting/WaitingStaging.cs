namespace PriceFloor.Storage.Tests.Waiting;

/// <summary>A connection with temporary tables whose every answer comes later.</summary>
/// <param name="inner">The connection that answers.</param>
public sealed class WaitingStaging(Staging inner) : Staging
{
    public override async ValueTask<Session> BeginPreparing()
    {
        await Task.Yield();
        return new WaitingSession(await inner.BeginPreparing());
    }

    public override async ValueTask<Session> BeginWriting(bool isLarge)
    {
        await Task.Yield();
        return new WaitingSession(await inner.BeginWriting(isLarge));
    }

    public override async ValueTask Settle()
    {
        await Task.Yield();
        await inner.Settle();
    }

    public override async ValueTask DisposeAsync()
    {
        await Task.Yield();
        await inner.DisposeAsync();
    }
}
