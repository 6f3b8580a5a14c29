using System.IO.Pipelines;

namespace PriceFloor.Api.Http;

/// <summary>
/// Large answers go out in blocks, each of which the caller must take in time. The web server's least rate alone allows a caller who takes nothing as
/// long as the whole answer would last at that rate.
/// </summary>
public static class AnswerBlocks
{
    private const int Size = 16 * 1024;

    private static readonly TimeSpan s_longest = TimeSpan.FromSeconds(30);

    public static async Task WriteAsync(HttpResponse response, ReadOnlyMemory<byte> body, CancellationToken cancel)
    {
        for (; body.Length > Size; body = body[Size..])
            await InTime(response.Body.WriteAsync(body[..Size], cancel), cancel);
        await InTime(response.Body.WriteAsync(body, cancel), cancel);
    }

    /// <summary>Throws a <see cref="TimeoutException"/> where the caller does not take a block.</summary>
    public static ValueTask<FlushResult> InTime(ValueTask<FlushResult> flush, CancellationToken cancel) =>
        flush.IsCompleted ? flush : new(flush.AsTask().WaitAsync(s_longest, cancel));

    public static Task InTime(Task write, CancellationToken cancel) => write.IsCompleted ? write : write.WaitAsync(s_longest, cancel);

    private static ValueTask InTime(ValueTask write, CancellationToken cancel) => write.IsCompleted ? write : new(write.AsTask().WaitAsync(s_longest, cancel));
}
