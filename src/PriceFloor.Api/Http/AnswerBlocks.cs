namespace PriceFloor.Api.Http;

/// <summary>
/// Large answers are sent in blocks, and the caller must take each block in time. The web server's minimum data rate alone gives a caller who takes
/// nothing as long as the whole answer would last at that rate.
/// </summary>
public static class AnswerBlocks
{
    private const int Size = 16 * 1024;

    /// <summary>The time that a caller has for a block.</summary>
    public static TimeSpan Longest(HttpContext context) => context.RequestServices.GetRequiredService<AnswerTime>().Longest;

    public static async Task WriteAsync(HttpResponse response, ReadOnlyMemory<byte> body, CancellationToken cancel)
    {
        for (; body.Length > Size; body = body[Size..])
            await InTime(response.Body.WriteAsync(body[..Size], cancel), response.HttpContext);
        await InTime(response.Body.WriteAsync(body, cancel), response.HttpContext);
    }

    /// <summary>Throws a <see cref="TimeoutException"/> if the caller does not take a block; the caller is then disconnected.</summary>
    public static ValueTask InTime(ValueTask write, HttpContext context) =>
        write.IsCompleted ? write : new(write.AsTask().WaitAsync(Longest(context), context.RequestAborted));
}

/// <summary>How long a caller may take for a block of an answer.</summary>
public sealed record AnswerTime(TimeSpan Longest);
