using System.Net.Http.Headers;
using Xunit;

namespace PriceFloor.Api.Tests.Access;

/// <summary>An open connection is recognised by the header that it sent before, but only as long as the key in it is valid.</summary>
public sealed class SameConnectionTests
{
    [Fact]
    public async Task A_key_opens_only_until_it_is_deleted()
    {
        await using var studio = new Studio(onSockets: true);
        using var connection = Connection(studio);
        var key = await KeyOf(studio, "shop");
        Assert.Equal((200, 200), (await Ask(connection, key), await Ask(connection, key)));

        await studio.Delete("/v1/keys/shop");
        Assert.Equal(401, await Ask(connection, key));
        var successor = await KeyOf(studio, "shop");
        Assert.Equal((200, 401), (await Ask(connection, successor), await Ask(connection, key)));
    }

    [Fact]
    public async Task A_key_opens_only_until_it_expires_or_its_rotation_ends_it()
    {
        await using var studio = new Studio(onSockets: true);
        using var connection = Connection(studio);
        var guest = await KeyOf(studio, "guest", ""","expires":"2027-01-02T10:00:00Z" """);
        Assert.Equal((200, 200), (await Ask(connection, guest), await Ask(connection, guest)));
        studio.Clock.Advance(TimeSpan.FromHours(1));
        Assert.Equal(401, await Ask(connection, guest));

        var shop = await KeyOf(studio, "shop");
        Assert.Equal((200, 200), (await Ask(connection, shop), await Ask(connection, shop)));
        await studio.Send("POST", "/v1/keys/shop/rotation?overlapHours=0", null);
        Assert.Equal(401, await Ask(connection, shop));
    }

    [Fact]
    public async Task Keys_that_share_a_connection_are_distinguished()
    {
        await using var studio = new Studio(onSockets: true);
        using var connection = Connection(studio); // as a proxy keeps it for many callers
        var (reader, checker, writer) = (await KeyOf(studio, "reader"), await KeyOf(studio, "checker", scope: "check"),
            await KeyOf(studio, "writer", scope: "write"));
        var none = "pf_" + new string('a', 54);
        for (var round = 0; round < 3; round++)
            foreach (var (key, status) in new[] { (reader, 200), (reader, 200), (checker, 403), (none, 401), (writer, 403), (reader, 200),
                    (none, 401), (none, 401), (checker, 403), (checker, 403) })
                Assert.Equal(status, await Ask(connection, key));
    }

    private static async Task<string> KeyOf(Studio studio, string name, string more = "", string scope = "read") =>
        (await studio.Post("/v1/keys", $$"""{"name":"{{name}}","scopes":["{{scope}}"]{{more}}}""")).Json.GetProperty("key").GetString()!;

    private static HttpClient Connection(Studio studio) =>
        new(new SocketsHttpHandler { MaxConnectionsPerServer = 1 }) { BaseAddress = studio.Address };

    private static async Task<int> Ask(HttpClient connection, string key)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri("/v1/profiles", UriKind.Relative))
        {
            Headers = { Authorization = new AuthenticationHeaderValue("Bearer", key) },
        };
        using var answer = await connection.SendAsync(request, Studio.Cancellation);
        return (int)answer.StatusCode;
    }
}
