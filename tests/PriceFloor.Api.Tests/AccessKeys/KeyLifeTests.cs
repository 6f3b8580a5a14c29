using System.Text;
using Microsoft.Data.Sqlite;
using PriceFloor.Api.Http.Reading;
using Xunit;

namespace PriceFloor.Api.Tests.AccessKeys;

/// <summary>Keys from creation to deletion: used, rotated, the last of the admins.</summary>
public sealed class KeyLifeTests
{
    [Fact]
    public async Task A_key_is_shown_once_and_kept_only_as_a_hash()
    {
        await using var studio = new Studio();
        var made = await studio.Post("/v1/keys", """{"name":"shop","scopes":["check"]}""");
        Assert.Equal((201, "/v1/keys/shop", "no-store"), (made.Status, made["Location"], made["Cache-Control"]));
        var key = made.Json.GetProperty("key").GetString()!;
        Assert.Matches("^pf_[A-Za-z0-9]{54}$", key);

        var list = await studio.Get("/v1/keys");
        Assert.DoesNotContain(key, list.Text, StringComparison.Ordinal);
        Assert.Equal("no-store", list["Cache-Control"]);
        foreach (var file in Directory.EnumerateFiles(studio.Folder).Where(file => Path.GetFileName(file) != "pricefloor.lock"))
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using var bytes = new MemoryStream();
            await stream.CopyToAsync(bytes, Studio.Cancellation);
            Assert.Equal(-1, bytes.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(key)));
            Assert.Equal(-1, bytes.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(Studio.AdminKey)));
        }
    }

    [Fact]
    public async Task Keys_end_when_they_expire_or_are_deleted_and_the_last_admin_key_stays()
    {
        await using var studio = new Studio();
        var made = await studio.Post("/v1/keys", """{"name":"guest","scopes":["read"],"expires":"2027-01-03T00:00:00Z"}""");
        var guest = studio.ClientWith(made.Json.GetProperty("key").GetString());
        Assert.Equal(200, (await studio.Get("/v1/profiles", guest)).Status);
        studio.Clock.Advance(TimeSpan.FromDays(1));
        (await studio.Get("/v1/profiles", guest)).IsProblem(401, "no-key");

        (await studio.Post("/v1/keys", """{"name":"guest","scopes":["read"]}""")).IsProblem(409, "in-use");
        (await studio.Post("/v1/keys", """{"name":"late","scopes":["read"],"expires":"2027-01-01T00:00:00Z"}""")).IsProblem(422, "invalid-input");
        Assert.Equal(["#/scopes/0"], (await studio.Post("/v1/keys", """{"name":"x","scopes":["all"]}""")).IsProblem(422, "invalid-input").Pointers);

        var reader = await studio.ClientFor("read");
        (await studio.Delete("/v1/keys/first-admin-key")).IsProblem(409, "in-use");
        (await studio.Delete("/v1/keys/nobody")).IsProblem(404, "not-found");
        var readers = (await studio.Get("/v1/keys")).Json.GetProperty("items").EnumerateArray().Select(key => key.GetProperty("name").GetString()!)
            .Single(name => name.StartsWith("key-", StringComparison.Ordinal));
        Assert.Equal(204, (await studio.Delete($"/v1/keys/{readers}")).Status);
        (await studio.Get("/v1/profiles", reader)).IsProblem(401, "no-key");
    }

    [Fact]
    public async Task A_key_says_in_which_minute_it_was_last_used_without_a_write_for_each_request()
    {
        await using var studio = new Studio();
        using var shop =
            studio.ClientWith((await studio.Post("/v1/keys", """{"name":"shop","scopes":["read"]}""")).Json.GetProperty("key").GetString());
        Assert.Null(await LastUse(studio, "shop"));

        studio.Clock.Advance(TimeSpan.FromSeconds(90)); // 09:01:30
        await studio.Get("/v1/profiles", shop);
        Assert.Equal("2027-01-02T09:01:00.000000Z", await LastUse(studio, "shop"));
        Assert.Null(Written(studio, "shop"));

        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        await Until(() => Written(studio, "shop") is not null);
        Assert.Equal(1_798_880_460_000_000, Written(studio, "shop")); // 2027-01-02T09:01:00Z
    }

    [Fact]
    public async Task The_last_use_outlives_a_restart_and_a_deleted_key_takes_it_along()
    {
        var first = new Studio();
        using (var shop =
                first.ClientWith((await first.Post("/v1/keys", """{"name":"shop","scopes":["read"]}""")).Json.GetProperty("key").GetString()))
            await first.Get("/v1/profiles", shop);
        await using var again = await first.Restarted();
        Assert.Equal("2027-01-02T09:00:00.000000Z", await LastUse(again, "shop"));

        await again.Delete("/v1/keys/shop");
        await again.Post("/v1/keys", """{"name":"shop","scopes":["read"]}""");
        Assert.Null(await LastUse(again, "shop"));
    }

    [Fact]
    public async Task A_rotated_key_works_for_a_day_beside_its_successor()
    {
        await using var studio = new Studio();
        var old = studio.ClientWith((await studio.Post("/v1/keys", """{"name":"shop","scopes":["read"],"profiles":["main"]}"""))
            .Json.GetProperty("key").GetString());
        var answer = await studio.Send("POST", "/v1/keys/shop/rotation", null);
        Assert.Equal((201, "/v1/keys/shop", "no-store"), (answer.Status, answer["Location"], answer["Cache-Control"]));
        Assert.Equal("2027-01-03T09:00:00.000000Z", answer.Json.GetProperty("previousUntil").GetString());
        Assert.Equal("""["main"]""", answer.Json.GetProperty("profiles").GetRawText());
        Assert.Matches("^pf_[A-Za-z0-9]{54}$", answer.Json.GetProperty("key").GetString());
        var successor = studio.ClientWith(answer.Json.GetProperty("key").GetString());

        Assert.Equal((200, 200), ((await studio.Get("/v1/profiles", old)).Status, (await studio.Get("/v1/profiles", successor)).Status));
        studio.Clock.Advance(TimeSpan.FromHours(24) - TimeSpan.FromMilliseconds(1));
        Assert.Equal(200, (await studio.Get("/v1/profiles", old)).Status);
        studio.Clock.Advance(TimeSpan.FromMilliseconds(1));
        (await studio.Get("/v1/profiles", old)).IsProblem(401, "no-key");
        Assert.Equal(200, (await studio.Get("/v1/profiles", successor)).Status);
        Assert.DoesNotContain("previousUntil", (await studio.Get("/v1/keys")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rotation_without_overlap_ends_the_old_key_now_and_a_second_one_ends_the_one_before()
    {
        await using var studio = new Studio();
        var secrets =
            new List<string> { (await studio.Post("/v1/keys", """{"name":"shop","scopes":["read"]}""")).Json.GetProperty("key").GetString()! };
        foreach (var query in new[] { "", "?overlapHours=720", "?overlapHours=0" })
            secrets.Add((await studio.Send("POST", "/v1/keys/shop/rotation" + query, null)).Json.GetProperty("key").GetString()!);
        var opens = new List<int>();
        foreach (var secret in secrets)
            opens.Add((await studio.Get("/v1/profiles", studio.ClientWith(secret))).Status);
        Assert.Equal([401, 401, 401, 200], opens);
        Assert.Equal(["overlapHours"],
            (await studio.Send("POST", "/v1/keys/shop/rotation?overlapHours=721", null)).IsProblem(422, "invalid-input").Pointers);
    }

    [Fact]
    public async Task A_rotated_key_ends_when_it_expires_even_within_the_overlap_and_an_expired_one_is_not_rotated()
    {
        await using var studio = new Studio();
        var old = studio.ClientWith((await studio.Post("/v1/keys", """{"name":"guest","scopes":["read"],"expires":"2027-01-02T10:00:00Z"}"""))
            .Json.GetProperty("key").GetString());
        await studio.Send("POST", "/v1/keys/guest/rotation", null);
        studio.Clock.Advance(TimeSpan.FromHours(1));
        (await studio.Get("/v1/profiles", old)).IsProblem(401, "no-key");
        (await studio.Send("POST", "/v1/keys/guest/rotation", null)).IsProblem(404, "not-found");
        (await studio.Send("POST", "/v1/keys/nobody/rotation", null)).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task An_admin_key_that_will_expire_does_not_let_the_last_lasting_one_go()
    {
        await using var studio = new Studio();
        await studio.Post("/v1/keys", """{"name":"guest","scopes":["admin"],"expires":"2028-01-01T00:00:00Z"}""");
        (await studio.Delete("/v1/keys/first-admin-key")).IsProblem(409, "in-use");
        Assert.Equal(204, (await studio.Delete("/v1/keys/guest")).Status);
    }

    private static async Task<string?> LastUse(Studio studio, string name) =>
        (await studio.Get("/v1/keys")).Json.GetProperty("items").EnumerateArray().Single(key => key.GetProperty("name").GetString() == name)
            .TryGetProperty("lastUsed", out var at) ? at.GetString() : null;

    private static long? Written(Studio studio, string name)
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(studio.Folder, "pricefloor.db")};Pooling=False;Mode=ReadOnly");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT last_used FROM access_key WHERE name = $name";
        command.Parameters.AddWithValue("$name", name);
        return command.ExecuteScalar() as long?;
    }

    private static async Task Until(Func<bool> done)
    {
        for (var i = 0; i < 200 && !done(); i++)
            await Task.Delay(20, Studio.Cancellation);
        Assert.True(done());
    }
}
