using System.Net.Sockets;
using System.Text;
using PriceFloor.Api.Access;
using Xunit;

namespace PriceFloor.Api.Tests.Http;

/// <summary>
/// Requests that the web server itself refuses before any code of ours runs: a bare 400 or 431 and a closed connection, as integrating.md says. Any
/// other refusal is a problem.
/// </summary>
public sealed class RefusedBeforeUsTests
{
    [Theory]
    [InlineData("GET /v1/designs/%00 HTTP/1.1\r\nHost: localhost\r\n\r\n", 400)]
    [InlineData("GET /v1/designs/a%00b/floor-price HTTP/1.1\r\nHost: localhost\r\n\r\n", 400)]
    [InlineData("nonsense\r\n\r\n", 400)]
    [InlineData("GET / HTTP/1.1\r\n\r\n", 400)]
    [InlineData("GET / HTTP/1.1\r\nHost: localhost\r\nX: \0\r\n\r\n", 400)]
    public async Task Is_answered_bare_and_let_go(string request, int status)
    {
        await using var studio = new Studio(onSockets: true);
        var answer = await Asked(studio, request);
        Assert.StartsWith($"HTTP/1.1 {status} ", answer, StringComparison.Ordinal);
        Assert.EndsWith("\r\n\r\n", answer, StringComparison.Ordinal);
        Assert.Equal(200, (await studio.Get("/health/live")).Status);
    }

    [Theory]
    [InlineData("GET /v1/designs?after=%00 HTTP/1.1", 422)]
    [InlineData("GET /v1/designs/%01 HTTP/1.1", 404)]
    [InlineData("GET /v1/designs/%FF HTTP/1.1", 404)]
    [InlineData("GET /v1/designs/%C0%80 HTTP/1.1", 404)]
    [InlineData("GET /v1/designs/%ED%A0%80 HTTP/1.1", 404)]
    [InlineData("PUT /v1/designs/%FF HTTP/1.1", 422)]
    [InlineData("GET /v1/designs/%2e%2e/nowhere HTTP/1.1", 404)]
    public async Task All_else_is_a_problem(string line, int status)
    {
        await using var studio = new Studio(onSockets: true);
        await studio.HasASmallShop();
        var body = line.StartsWith("PUT", StringComparison.Ordinal) ? Sample.Pendant : "";
        var answer = await Asked(studio, $"{line}\r\nHost: localhost\r\nConnection: close\r\nAuthorization: Bearer {Studio.AdminKey}\r\n"
            + $"Content-Type: application/json\r\nContent-Length: {body.Length}\r\n\r\n{body}");
        Assert.StartsWith($"HTTP/1.1 {status} ", answer, StringComparison.Ordinal);
        Assert.Contains("application/problem+json", answer, StringComparison.Ordinal);
    }

    /// <summary>Headers as bytes that are not text: refused by the server or read as they are, never a fault.</summary>
    [Fact]
    public async Task Odd_bytes_in_headers_are_never_a_fault_of_the_service()
    {
        await using var studio = new Studio(onSockets: true);
        await studio.HasASmallShop();
        byte[][] odd = [[0x92], [0xFF], [0xC3, 0xA9], [0xC0, 0x80], [0xED, 0xA0, 0x80], [0x01], [0x7F], "\""u8.ToArray(),
            ";;"u8.ToArray(), "%00"u8.ToArray()];
        foreach (var name in new[] { "Accept", "If-Match", "If-None-Match", "Content-Type", "Content-Encoding", "Authorization", "Origin",
                "X-Forwarded-For", "Transfer-Encoding" })
            foreach (var bytes in odd)
                foreach (var line in new[] { "GET /v1/designs/RB-014 HTTP/1.1", "PUT /v1/channels/web HTTP/1.1" })
                {
                    byte[] request = [.. Encoding.ASCII.GetBytes($"{line}\r\nHost: localhost\r\n"
                        + $"Connection: close\r\n{(name == "Authorization" ? "" : $"Authorization: Bearer {Studio.AdminKey}\r\n")}Content-Length: "
                        + $"2\r\n{name}: a"), .. bytes, .. "\r\n\r\n{}"u8];
                    var answer = await Asked(studio, request);
                    Assert.True(answer.StartsWith("HTTP/1.1 2", StringComparison.Ordinal)
                        || answer.StartsWith("HTTP/1.1 4", StringComparison.Ordinal), $"{line} {name} {Convert.ToHexString(bytes)}: {answer}");
                }
    }

    private static Task<string> Asked(Studio studio, string request) => Asked(studio, Encoding.Latin1.GetBytes(request));

    private static async Task<string> Asked(Studio studio, byte[] request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(studio.Address.Host, studio.Address.Port, Studio.Cancellation);
        var stream = client.GetStream();
        await stream.WriteAsync(request, Studio.Cancellation);
        var answer = new MemoryStream();
        try
        {
            await stream.CopyToAsync(answer, Studio.Cancellation);
        }
        catch (IOException)
        {
            // disconnected without an answer; what came before counts
        }

        return Encoding.Latin1.GetString(answer.ToArray());
    }
}
