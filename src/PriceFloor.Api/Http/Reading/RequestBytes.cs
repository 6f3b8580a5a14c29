using System.Buffers;

namespace PriceFloor.Api.Http.Reading;

/// <summary>The bytes of a request's body, counted against the memory that all bodies share.</summary>
public static class RequestBytes
{
    private const int Step = 1024 * 1024;

    /// <summary>The body, or null if it is larger than the limit.</summary>
    public static async ValueTask<byte[]?> ReadAllAsync(HttpContext context, int mostBytes)
    {
        var memory = context.RequestServices.GetRequiredService<BodyMemory>();
        if (context.Request.ContentLength > mostBytes)
            return null;
        var counted = context.Request.ContentLength ?? 0;
        memory.Take(context, counted);
        var reader = context.Request.BodyReader;
        while (true)
        {
            var read = await reader.ReadAsync(context.RequestAborted);
            if (read.Buffer.Length > mostBytes)
            {
                reader.AdvanceTo(read.Buffer.End);
                return null;
            }

            if (read.Buffer.Length > long.Max(counted, Step))
            {
                memory.Take(context, long.Max(Step, read.Buffer.Length - counted)); // the request did not say its length
                counted += long.Max(Step, read.Buffer.Length - counted);
            }

            if (read.IsCompleted)
            {
                var body = read.Buffer.ToArray();
                reader.AdvanceTo(read.Buffer.End);
                return body;
            }

            reader.AdvanceTo(read.Buffer.Start, read.Buffer.End);
        }
    }
}
