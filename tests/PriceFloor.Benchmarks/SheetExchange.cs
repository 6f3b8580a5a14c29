using System.Diagnostics;
using System.Net.Sockets;
using System.Text;

namespace PriceFloor.Benchmarks;

/// <summary>A sheet sent to a service by one who reads the answer while still sending.</summary>
public static class SheetExchange
{
    private const int Buffer = 256 * 1024;

    /// <summary>From the first byte sent to the last one read.</summary>
    /// <returns>The time and the lines of the answer, its header among them.</returns>
    public static async Task<(TimeSpan Took, long Lines)> RunAsync(int port, string path, string key, string sheet)
    {
        using var socket = await Load.ConnectAsync(port);
        await using var file = new FileStream(sheet, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0, useAsync: false);
        var clock = Stopwatch.StartNew();
        var reading = Task.Run(() => CountLinesAsync(socket));
        await socket.SendAsync(Encoding.ASCII.GetBytes(
            $"POST {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\nAuthorization: Bearer {key}\r\nContent-Type: text/csv\r\n"
            + $"Content-Length: {file.Length}\r\n\r\n"));
        var buffer = new byte[Buffer];
        while (await file.ReadAsync(buffer) is > 0 and var count)
            for (var sent = 0; sent < count;)
                sent += await socket.SendAsync(buffer.AsMemory(sent, count - sent));
        return (await reading is var lines ? clock.Elapsed : default, lines);
    }

    /// <summary>Lines of a sheet end with a line feed alone, whatever HTTP puts around them with a carriage return before it.</summary>
    private static async Task<long> CountLinesAsync(Socket socket)
    {
        var (buffer, lines, first) = (new byte[Buffer], 0L, true);
        while (await socket.ReceiveAsync(buffer) is > 0 and var count)
        {
            if (first && !buffer.AsSpan(0, count).StartsWith("HTTP/1.1 200"u8))
                throw new InvalidOperationException(Encoding.UTF8.GetString(buffer, 0, count));
            first = false;
            lines += buffer.AsSpan(0, count).Count((byte)'\n') - buffer.AsSpan(0, count).Count((byte)'\r');
        }

        return lines;
    }
}
