using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace PriceFloor.Benchmarks;

/// <summary>Requests over loopback as fast as they are answered, on so many connections, each waiting for its answer before it asks again.</summary>
public static class Load
{
    /// <summary>What a stretch of load came to.</summary>
    public sealed record Result(long Requests, double Seconds, double P99Milliseconds)
    {
        public double PerSecond => Requests / Seconds;
    }

    public static async Task<Result> RunAsync(int port, byte[] request, int connections, TimeSpan duration)
    {
        var until = Stopwatch.GetTimestamp() + (long)(duration.TotalSeconds * Stopwatch.Frequency);
        var started = Stopwatch.GetTimestamp();
        var times = await Task.WhenAll(Enumerable.Range(0, connections).Select(_ => Task.Run(() => ConnectionAsync(port, request, until))));
        var seconds = Stopwatch.GetElapsedTime(started).TotalSeconds;
        var all = times.SelectMany(time => time).Order().ToList();
        return new Result(all.Count, seconds, all.Count == 0 ? 0 : all[(int)(all.Count * 0.99)] * 1000.0 / Stopwatch.Frequency);
    }

    private static async Task<List<long>> ConnectionAsync(int port, byte[] request, long until)
    {
        using var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        await socket.ConnectAsync(IPAddress.Loopback, port);
        var (times, buffer) = (new List<long>(100_000), new byte[16 * 1024]);
        while (Stopwatch.GetTimestamp() is var asked && asked < until)
        {
            await socket.SendAsync(request);
            await ReadAnswerAsync(socket, buffer);
            times.Add(Stopwatch.GetTimestamp() - asked);
        }

        return times;
    }

    /// <summary>One whole answer of status 200, with a length or in chunks.</summary>
    private static async Task ReadAnswerAsync(Socket socket, byte[] buffer)
    {
        var (read, body, length) = (0, -1, -1);
        while (true)
        {
            var count = await socket.ReceiveAsync(buffer.AsMemory(read));
            if (count == 0)
                throw new InvalidOperationException("The service closed the connection.");
            read += count;
            if (body < 0 && buffer.AsSpan(0, read).IndexOf("\r\n\r\n"u8) is >= 0 and var end)
            {
                body = end + 4;
                var headers = Encoding.ASCII.GetString(buffer, 0, body);
                if (!headers.StartsWith("HTTP/1.1 200", StringComparison.Ordinal))
                    throw new InvalidOperationException(Encoding.UTF8.GetString(buffer, 0, read));
                var at = headers.IndexOf("Content-Length: ", StringComparison.OrdinalIgnoreCase);
                length = at < 0 ? -1 : int.Parse(headers.AsSpan(at + 16, headers.IndexOf('\r', at) - at - 16));
            }

            if (body >= 0 && (length >= 0 ? read - body >= length : buffer.AsSpan(0, read).EndsWith("0\r\n\r\n"u8)))
                return;
        }
    }
}
