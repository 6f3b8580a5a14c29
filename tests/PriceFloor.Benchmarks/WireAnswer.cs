using System.Buffers.Text;
using System.Globalization;
using System.Net.Sockets;
using System.Text;

namespace PriceFloor.Benchmarks;

/// <summary>One whole answer as it came over the wire, of a status that says it went well, or that the service was busy.</summary>
/// <param name="Bytes">Headers and body, framing included.</param>
public readonly record struct WireAnswer(ReadOnlyMemory<byte> Bytes)
{
    private static ReadOnlySpan<byte> EndOfHeaders => "\r\n\r\n"u8;

    private static ReadOnlySpan<byte> Busy => "HTTP/1.1 503"u8;

    public bool IsBusy => Bytes.Span.StartsWith(Busy);

    /// <summary>The body without the framing of its chunks.</summary>
    public string Body
    {
        get
        {
            var start = Bytes.Span.IndexOf(EndOfHeaders) + EndOfHeaders.Length;
            var body = Encoding.UTF8.GetString(Bytes.Span[start..]);
            if (LengthIn(Bytes.Span[..start]) >= 0)
                return body;
            var whole = new StringBuilder(); // chunks are as long in letters as in bytes here: our answers to these questions are ASCII
            for (var at = 0; Chunk(body, at) is { Length: > 0 } chunk; at = body.IndexOf("\r\n", at, StringComparison.Ordinal) + 2 + chunk.Length + 2)
                whole.Append(chunk);
            return whole.ToString();
        }
    }

    /// <param name="socket">Where the answer comes from.</param>
    /// <param name="buffer">Room for all of it, used anew for each.</param>
    /// <param name="mayBeBusy">Whether it may also be refused as busy; every other status is thrown.</param>
    public static async ValueTask<WireAnswer> ReadAsync(Socket socket, byte[] buffer, bool mayBeBusy = false)
    {
        var (read, body, length) = (0, -1, -1);
        while (true)
        {
            var count = await socket.ReceiveAsync(buffer.AsMemory(read));
            if (count == 0)
                throw new InvalidOperationException("The service closed the connection, or its answer is longer than was expected.");
            read += count;
            if (body < 0 && buffer.AsSpan(0, read).IndexOf(EndOfHeaders) is >= 0 and var end)
            {
                body = end + EndOfHeaders.Length;
                if (!buffer.AsSpan(0, read).StartsWith("HTTP/1.1 20"u8) && !(mayBeBusy && buffer.AsSpan(0, read).StartsWith(Busy)))
                    throw new InvalidOperationException(Encoding.UTF8.GetString(buffer, 0, read));
                length = LengthIn(buffer.AsSpan(0, body));
            }

            if (body >= 0 && (length >= 0 ? read - body >= length : buffer.AsSpan(0, read).EndsWith("0\r\n\r\n"u8)))
                return new WireAnswer(buffer.AsMemory(0, read));
        }
    }

    private static string Chunk(string body, int at)
    {
        var end = body.IndexOf("\r\n", at, StringComparison.Ordinal);
        return body.Substring(end + 2, int.Parse(body.AsSpan(at, end - at), NumberStyles.HexNumber, CultureInfo.InvariantCulture));
    }

    private static int LengthIn(ReadOnlySpan<byte> headers)
    {
        var at = headers.IndexOf("Content-Length: "u8) is >= 0 and var found ? found : headers.IndexOf("content-length: "u8);
        return at >= 0 && Utf8Parser.TryParse(headers[(at + "Content-Length: ".Length)..], out int length, out _) ? length : -1;
    }
}
