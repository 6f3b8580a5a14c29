using System.Diagnostics;

namespace PriceFloor.Storage;

/// <summary>
/// Asks where a store stands from time to time instead of once a request, as long as requests come. When nothing has been heard for a while, each
/// request asks again.
/// </summary>
/// <param name="every">The pause between two questions.</param>
/// <param name="ask">Asks, and notes the answer.</param>
internal sealed class Polling(TimeSpan every, Func<Task> ask) : IDisposable
{
    private static readonly TimeSpan s_longest = TimeSpan.FromSeconds(2), s_unwanted = TimeSpan.FromSeconds(10);

    private readonly CancellationTokenSource _ending = new();
    private int _begun;
    private long _heard, _wanted;

    /// <summary>Whether the last answer is recent enough.</summary>
    public bool IsRecent
    {
        get
        {
            Interlocked.Exchange(ref _wanted, Stopwatch.GetTimestamp());
            if (Interlocked.Exchange(ref _begun, 1) == 0)
                _ = RunAsync();
            return Interlocked.Read(ref _heard) is > 0 and var heard && Stopwatch.GetElapsedTime(heard) < s_longest;
        }
    }

    public void Dispose()
    {
        _ending.Cancel();
        _ending.Dispose();
    }

    private async Task RunAsync()
    {
        var ended = _ending.Token;
        while (!ended.IsCancellationRequested && Stopwatch.GetElapsedTime(Interlocked.Read(ref _wanted)) < s_unwanted)
        {
            var asked = Stopwatch.GetTimestamp();
            try
            {
                await ask();
                Interlocked.Exchange(ref _heard, asked);
            }
            catch (Exception e) when (e is StoreTroubleException or ObjectDisposedException)
            {
                // Requests ask by themselves once the last answer is old, and report what they hear.
            }

            await Task.Delay(every, ended).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        Interlocked.Exchange(ref _begun, 0); // of a host's thousand studios few are asked for at once
    }
}
