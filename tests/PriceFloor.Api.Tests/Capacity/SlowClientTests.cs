using System.Diagnostics;
using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Hosting;
using PriceFloor.Api.Access;
using Xunit;

namespace PriceFloor.Api.Tests.Capacity;

/// <summary>Callers that are slow, or only connected, on real sockets: they are disconnected, and others are answered meanwhile.</summary>
public sealed class SlowClientTests
{
    [Fact]
    public async Task Headers_that_trickle_are_cut_off()
    {
        await using var studio = OnSockets(("PRICEFLOOR_HEADER_SECONDS", "1"));
        using var slow = await Connected(studio);
        var answer = await Trickle(slow, "GET /health/live HTTP/1.1\r\nHost: localhost\r\nX-Slow: ", "a", studio);
        Assert.StartsWith("HTTP/1.1 408", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_body_that_trickles_is_cut_off_and_nothing_is_stored()
    {
        await using var studio = OnSockets(("PRICEFLOOR_LEAST_BYTES_PER_SECOND", "1000"));
        using var slow = await Connected(studio);
        var answer = await Trickle(slow, $"PUT /v1/profiles/slow HTTP/1.1\r\nHost: localhost\r\nAuthorization: Bearer {Studio.AdminKey}\r\n"
            + "Content-Type: application/json\r\nContent-Length: 100000\r\n\r\n", " ", studio);
        Assert.StartsWith("HTTP/1.1 4", answer, StringComparison.Ordinal);
        (await studio.Get("/v1/profiles/slow")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task Just_as_many_connections_as_set_are_taken()
    {
        await using var studio = OnSockets(("PRICEFLOOR_CONNECTIONS", "2"));
        using var one = await Connected(studio);
        using var two = await Connected(studio);
        Assert.StartsWith("HTTP/1.1 200", await Asked(one), StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 200", await Asked(two), StringComparison.Ordinal);
        using var three = await Connected(studio);
        Assert.Equal("", await Asked(three));
    }

    [Fact]
    public async Task No_answer_names_the_server_behind_it()
    {
        await using var studio = OnSockets();
        foreach (var path in new[] { "/health/live", "/v1/profiles", "/docs", "/problems", "/nowhere" })
            Assert.Null((await studio.Get(path))["Server"]);
    }

    /// <summary>Sends a byte every tenth of a second until it is answered or cut off, while others are served.</summary>
    private static async Task<string> Trickle(TcpClient slow, string start, string drop, Studio studio)
    {
        var stream = slow.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(start), Studio.Cancellation);
        var answer = ReadAll(stream);
        var watch = Stopwatch.StartNew();
        while (!answer.IsCompleted)
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(30), "the slow caller still holds its connection");
            try
            {
                await stream.WriteAsync(Encoding.ASCII.GetBytes(drop), Studio.Cancellation);
            }
            catch (IOException)
            {
                break; // cut off
            }

            Assert.Equal(200, (await studio.Get("/health/live")).Status);
            await Task.Delay(100, Studio.Cancellation);
        }

        return await answer;
    }

    private static async Task<string> Asked(TcpClient client)
    {
        try
        {
            var stream = client.GetStream();
            await stream.WriteAsync("GET /health/live HTTP/1.1\r\nHost: localhost\r\n\r\n"u8.ToArray(), Studio.Cancellation);
            var buffer = new byte[4096];
            return Encoding.ASCII.GetString(buffer, 0, await stream.ReadAsync(buffer, Studio.Cancellation));
        }
        catch (IOException)
        {
            return "";
        }
    }

    private static async Task<string> ReadAll(NetworkStream stream)
    {
        var text = new MemoryStream();
        try
        {
            await stream.CopyToAsync(text, Studio.Cancellation);
        }
        catch (IOException)
        {
            // cut off; what came before counts
        }

        return Encoding.ASCII.GetString(text.ToArray());
    }

    private static async Task<TcpClient> Connected(Studio studio)
    {
        var client = new TcpClient();
        await client.ConnectAsync(studio.Address.Host, studio.Address.Port, Studio.Cancellation);
        return client;
    }

    private static Studio OnSockets(params (string Name, string Value)[] settings) => new(onSockets: true, configure: host =>
    {
        foreach (var (name, value) in settings)
            host.UseSetting(name, value);
    });
}
