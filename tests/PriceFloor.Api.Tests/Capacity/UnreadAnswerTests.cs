using System.Diagnostics;
using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Hosting;
using PriceFloor.Api.Access;
using Xunit;

namespace PriceFloor.Api.Tests.Capacity;

/// <summary>Callers who ask for much and never read the answer, on real sockets: each is disconnected, and its waiting file deleted.</summary>
public sealed class UnreadAnswerTests
{
    private const int Rows = 600_000; // answers of 20 MB and more: far more than all buffers on the way hold

    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(30);

    [Fact]
    public async Task A_batch_whose_answer_nobody_reads_is_let_go_with_its_file()
    {
        await using var studio = OnSockets(answerSeconds: 1);
        await studio.HasASmallShop();
        using var caller = await Connected(studio);
        await Send(caller, "POST", "/v1/price-checks/batch", "text/csv",
            "sku,channel,price\n" + string.Concat(Enumerable.Repeat("RB-014,web,58\n", Rows)));
        await Until(() => PutBy(studio).Length == 1, "nothing was put by");
        await Until(() => PutBy(studio).Length == 0, "the file of the answer is still there");
        await IsLetGo(caller);
        Assert.Equal(200, (await studio.Get("/v1/price-list?channel=web")).Status);
    }

    [Theory]
    [InlineData("/v1/designs?limit=1000", "application/json")]
    [InlineData("/v1/designs", "text/csv")]
    [InlineData("/v1/designs", "application/x-ndjson")]
    [InlineData("/v1/price-list?channel=web", "application/json")]
    [InlineData("/v1/audit?limit=1000", "application/json")]
    public async Task Large_answers_of_every_kind_that_nobody_reads_are_let_go(string path, string accept)
    {
        await using var studio = OnSockets(answerSeconds: 4); // the shop's own answers are to be read in time on a busy machine too
        await studio.HasASmallShop();
        var designs = Enumerable.Range(0, 1500).Select(i => $"{{\"key\":\"D-{i}\",\"name\":\"{new string('n', 190)}\",{Sample.Pendant[1..]}");
        Assert.Equal(200, (await studio.Post("/v1/designs/batch", $"[{string.Join(',', designs)}]")).Status);
        using var caller = await Connected(studio);
        for (var i = 0; i < 60; i++) // one after another on one connection
            await Send(caller, "GET", path, accept, "");
        await IsLetGo(caller);
    }

    [Fact]
    public async Task A_caller_who_reads_slowly_and_steadily_gets_everything()
    {
        await using var studio = OnSockets(answerSeconds: 3);
        await studio.HasASmallShop();
        using var caller = await Connected(studio, receives: 1024 * 1024);
        await Send(caller, "POST", "/v1/price-checks/batch", "text/csv",
            "sku,channel,price\n" + string.Concat(Enumerable.Repeat("RB-014,web,58\n", Rows)), "Connection: close\r\n");
        var (stream, block, verdicts) = (caller.GetStream(), new byte[400_000], 0);
        var watch = Stopwatch.StartNew();
        while (await stream.ReadAsync(block, Studio.Cancellation) is > 0 and var count)
        {
            verdicts += block.AsSpan(0, count).Count((byte)'7'); // once in a row, in the floor price of 61.74
            if (watch.Elapsed < TimeSpan.FromSeconds(5))
                await Task.Delay(100, Studio.Cancellation);
        }

        Assert.InRange(verdicts, Rows, Rows + 100_000); // lengths of chunks have the digit too
        Assert.True(watch.Elapsed > TimeSpan.FromSeconds(3)); // longer than a block may take
        Assert.Empty(PutBy(studio));
    }

    private static string[] PutBy(Studio studio) => Directory.GetFiles(studio.Folder, "answer-*.tmp");

    private static async Task Until(Func<bool> holds, string otherwise)
    {
        for (var watch = Stopwatch.StartNew(); !holds(); await Task.Delay(20, Studio.Cancellation))
            Assert.True(watch.Elapsed < s_patience, otherwise);
    }

    /// <summary>Reads nothing until the other side has closed the connection, which a failing write shows.</summary>
    private static async Task IsLetGo(TcpClient caller)
    {
        for (var watch = Stopwatch.StartNew(); ; await Task.Delay(100, Studio.Cancellation))
        {
            Assert.True(watch.Elapsed < s_patience, "the caller still holds its connection");
            try
            {
                await caller.GetStream().WriteAsync("\r\n"u8.ToArray(), Studio.Cancellation);
            }
            catch (IOException)
            {
                return;
            }
        }
    }

    private static async Task Send(TcpClient caller, string method, string path, string type, string body, string more = "")
    {
        var head = $"{method} {path} HTTP/1.1\r\nHost: localhost\r\nAuthorization: Bearer "
            + $"{Studio.AdminKey}\r\n{more}{(method == "GET" ? "Accept" : "Content-Type")}: {type}\r\nContent-Length: {body.Length}\r\n\r\n";
        try
        {
            await caller.GetStream().WriteAsync(Encoding.ASCII.GetBytes(head + body), Studio.Cancellation);
        }
        catch (IOException)
        {
            // already disconnected
        }
    }

    private static async Task<TcpClient> Connected(Studio studio, int receives = 4096)
    {
        var client = new TcpClient { ReceiveBufferSize = receives };
        await client.ConnectAsync(studio.Address.Host, studio.Address.Port, Studio.Cancellation);
        return client;
    }

    private static Studio OnSockets(int answerSeconds) =>
        new(onSockets: true, configure: host => host.UseSetting("PRICEFLOOR_ANSWER_SECONDS", $"{answerSeconds}"));
}
