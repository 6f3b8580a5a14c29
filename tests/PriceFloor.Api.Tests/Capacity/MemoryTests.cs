using System.Net;
using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Http;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Capacity;

/// <summary>No caller can take all the memory, the connections or the disk from the others.</summary>
public sealed class MemoryTests : IDisposable
{
    private static readonly int[] s_atOnce = [30_000_000, 9_000_000, 9_000_000, 4_000_000, 4_000_000, 4_000_000];
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-memory-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Large_bodies_are_counted_over_all_callers_until_their_requests_end()
    {
        var memory = new BodyMemory(10_000_000);
        var (first, second) = (new DefaultHttpContext(), new DefaultHttpContext());
        memory.Take(first, 6_000_000);
        Assert.Throws<NoRoomException>(() => memory.Take(second, 6_000_000));
        memory.Take(second, 200_000); // small ones are not counted
        memory.Take(second, 4_000_000);
        Assert.Equal((10_000_000, 7), (memory.MostOf(50_000_000), memory.MostOf(7)));
    }

    [Fact]
    public void What_waits_in_files_is_bounded_over_all_callers()
    {
        var putBy = new PutBy(100);
        putBy.Add(90);
        Assert.Throws<NoRoomException>(() => putBy.Add(20));
        Assert.False(putBy.IsFull);
        putBy.Add(10);
        Assert.True(putBy.IsFull);
        putBy.Remove(100);
        Assert.False(putBy.IsFull);
    }

    /// <summary>The memory of the shipped compose file, as the runtime sees it there: three quarters of 256 MiB.</summary>
    [Fact]
    public async Task Large_batches_in_little_memory_are_stored_or_refused_and_are_never_a_fault()
    {
        using var service = Start(_folder,
            new Dictionary<string, string> { ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey, ["DOTNET_GCHeapHardLimit"] = "0xC000000" });
        await Ready(service);
        using var client = new HttpClient { BaseAddress = new Uri(service.Address), Timeout = TimeSpan.FromMinutes(2) };
        client.DefaultRequestHeaders.ExpectContinue = true; // a body that is too large is refused before it is sent
        client.DefaultRequestHeaders.Authorization = new("Bearer", Studio.AdminKey);
        await client.PutAsync(new Uri("/v1/profiles/main", UriKind.Relative),
            new StringContent(Sample.SmallProfile, Encoding.UTF8, "application/json"), Studio.Cancellation);

        var statuses = await Task.WhenAll(s_atOnce.Select(async bytes =>
        {
            using var answer = await client.PostAsync(new Uri("/v1/designs/batch", UriKind.Relative),
                new ByteArrayContent(Designs(bytes)) { Headers = { ContentType = new("application/x-ndjson") } }, Studio.Cancellation);
            return answer.StatusCode;
        }));
        Assert.All(statuses,
            status => Assert.Contains(status, new[] { HttpStatusCode.OK, HttpStatusCode.RequestEntityTooLarge, HttpStatusCode.ServiceUnavailable }));
        Assert.Contains(HttpStatusCode.OK, statuses);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, statuses[0]);
        using var after = await client.GetAsync(new Uri("/v1/price-list?limit=1", UriKind.Relative), Studio.Cancellation);
        Assert.Equal(HttpStatusCode.OK, after.StatusCode);
    }

    [Fact]
    public async Task One_address_cannot_take_all_connections()
    {
        using var service = Start(_folder, new Dictionary<string, string> { ["PRICEFLOOR_CONNECTIONS_PER_ADDRESS"] = "20" });
        await Ready(service);
        var port = new Uri(service.Address).Port;
        var idle = new List<Socket>();
        for (var i = 0; i < 60; i++)
            await Opened(idle, "127.0.0.2", port);
        Assert.False(await Answers("127.0.0.2", port)); // it has twenty already
        Assert.True(await Answers("127.0.0.3", port)); // another has none
        idle.ForEach(socket => socket.Dispose());
        for (var i = 0; i < 100 && !await Answers("127.0.0.2", port); i++)
            await Task.Delay(50, Studio.Cancellation);
        Assert.True(await Answers("127.0.0.2", port)); // it has closed them
    }

    /// <summary>One more connection, if it is accepted.</summary>
    private static async Task Opened(List<Socket> sockets, string from, int port)
    {
        try
        {
            sockets.Add(await Connected(from, port));
        }
        catch (SocketException)
        {
        }
    }

    private static async Task<Socket> Connected(string from, int port)
    {
        var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        socket.Bind(new IPEndPoint(IPAddress.Parse(from), 0));
        await socket.ConnectAsync(IPAddress.Loopback, port, Studio.Cancellation);
        return socket;
    }

    private static async Task<bool> Answers(string from, int port)
    {
        try
        {
            using var socket = await Connected(from, port);
            await socket.SendAsync("GET /health/live HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n"u8.ToArray(), Studio.Cancellation);
            var bytes = new byte[64];
            return await socket.ReceiveAsync(bytes, Studio.Cancellation) > 0
                && Encoding.ASCII.GetString(bytes).StartsWith("HTTP/1.1 200", StringComparison.Ordinal);
        }
        catch (SocketException)
        {
            return false;
        }
    }

    private static byte[] Designs(int bytes)
    {
        var steps = string.Join(',', Enumerable.Repeat("""{"handsOnMinutes":12.5,"goodShare":0.95}""", 90));
        var text = new StringBuilder();
        for (var i = 0; text.Length < bytes; i++)
            text.Append(System.Globalization.CultureInfo.InvariantCulture,
                $$$"""{"key":"D{{{i}}}-{{{bytes}}}","profile":"main","name":"{{{new string('n', 150)}}}","making":{"steps":[{{{steps}}}]}}""")
                .Append('\n');
        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
