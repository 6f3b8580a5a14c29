using System.IO.Pipelines;
using System.Text;
using Microsoft.AspNetCore.Hosting;
using PriceFloor.Api.Access;
using Xunit;

namespace PriceFloor.Api.Tests.Capacity;

/// <summary>
/// Every limit, exactly at it and one past it. Slow callers are in <see cref="SlowClientTests"/>, wrong keys in <see cref="Access.WrongKeyTests"/>.
/// </summary>
public sealed class LimitTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    private const string Check = """{"sku":"RB-014","channel":"web","price":58}""";
    private static readonly int[] s_stored = [200, 201];

    [Theory]
    [InlineData("POST", "/v1/price-checks", Check, 200, "PRICEFLOOR_BODY_BYTES")]
    [InlineData("POST", "/v1/price-checks/batch", $"[{Check}]", 200, "PRICEFLOOR_BODY_BYTES")]
    [InlineData("POST", "/v1/designs/batch", """[{"key":"RB-015","profile":"main","making":{"piecesPerDay":4}}]""", 300, "PRICEFLOOR_BATCH_BYTES")]
    [InlineData("POST", "/v1/listed-prices/batch", $"[{Check}]", 300, "PRICEFLOOR_BATCH_BYTES")]
    [InlineData("POST", "/v1/price-checks", Check, 2 * 1024 * 1024, null)]
    [InlineData("POST", "/v1/price-checks/batch", $"[{Check}]", 2 * 1024 * 1024, null)]
    [InlineData("PUT", "/v1/profiles/main", Sample.SmallProfile, 2 * 1024 * 1024, null)]
    public async Task The_bytes_of_a_body(string method, string path, string body, int most, string? setting)
    {
        await using var studio = await With(setting ?? "PRICEFLOOR_BODY_BYTES", $"{most}");
        Assert.Equal(200, (await studio.Send(method, path, body.PadRight(most))).Status);
        (await studio.Send(method, path, body.PadRight(most + 1))).IsProblem(413, "too-large");
        if (setting is null)
            (await studio.Send(method, path, body.PadRight(3_000_000))).IsProblem(413, "too-large");
    }

    [Theory]
    [InlineData("/v1/price-checks/batch", "application/json", Check, 1000, 200)]
    [InlineData("/v1/designs/batch", "application/json", "{}", 10_000, 422)]
    [InlineData("/v1/designs/batch", "application/x-ndjson", "{}", 10_000, 422)]
    public async Task The_elements_of_a_batch(string path, string type, string item, int most, int status)
    {
        await using var studio = await With("PRICEFLOOR_REQUESTS_PER_MINUTE", "1000");
        Task<Answer> Batch(int count) => studio.SendBytes("POST", path, Encoding.UTF8.GetBytes(type == "application/json"
            ? $"[{string.Join(',', Enumerable.Repeat(item, count))}]" : string.Concat(Enumerable.Repeat(item + "\n", count))), type);
        var whole = await Batch(most);
        Assert.Equal(status, whole.Status);
        if (status == 200)
            Assert.Equal(most, whole.Json.GetProperty("items").GetArrayLength());
        (await Batch(most + 1)).IsProblem(413, "too-large");
    }

    [Fact]
    public async Task Requests_of_a_key_in_a_minute_and_another_key_is_not_concerned()
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_REQUESTS_PER_MINUTE", "3"));
        using var other = await studio.ClientFor("read"); // the first request of the admin key
        foreach (var left in new[] { 1, 0 })
        {
            var answer = await studio.Get("/v1/profiles");
            Assert.Equal(
                (200, $"\"default\";r={left};t=60", "\"default\";q=3;w=60", null),
                (answer.Status, answer["RateLimit"], answer["RateLimit-Policy"], answer["Retry-After"]));
        }

        foreach (var seconds in new[] { 60, 40 })
        {
            var tooMany = (await studio.Get("/v1/profiles")).IsProblem(429, "too-many-requests");
            Assert.Equal(
                ($"{seconds}", $"\"default\";r=0;t={seconds}", "\"default\";q=3;w=60"),
                (tooMany["Retry-After"], tooMany["RateLimit"], tooMany["RateLimit-Policy"]));
            (await studio.Put("/v1/profiles/main", Sample.SmallProfile)).IsProblem(429, "too-many-requests");
            studio.Clock.Advance(TimeSpan.FromSeconds(20));
        }

        Assert.Equal(200, (await studio.Get("/v1/profiles", other)).Status);
        (await studio.Get("/v1/profiles/main", other)).IsProblem(404, "not-found");
        studio.Clock.Advance(TimeSpan.FromSeconds(20));
        Assert.Equal("\"default\";r=2;t=60", (await studio.Get("/v1/profiles"))["RateLimit"]);
    }

    [Fact]
    public async Task Batches_of_a_key_at_once()
    {
        await using var studio = await With("PRICEFLOOR_BATCHES_AT_ONCE", "2");
        using var other = await studio.ClientFor("check");
        var (one, two) = (new Open(studio), new Open(studio));
        Task<Answer> Probe(HttpClient? client = null) =>
            studio.SendBytes("POST", "/v1/price-checks/batch", Encoding.UTF8.GetBytes(Check), "application/x-ndjson", client);
        Answer refused;
        var tries = 0;
        while ((refused = await Probe()).Status != 429 && tries++ < 500) // until both have arrived
        {
            await Task.Delay(10, Studio.Cancellation);
            if (two.IsAnswered) // a probe came before it, and it was the third
                two = new Open(studio);
            if (one.IsAnswered)
                one = new Open(studio);
        }

        Assert.Equal("1", refused.IsProblem(429, "too-many-requests")["Retry-After"]);
        Assert.Equal(200, (await Probe(other)).Status);
        Assert.Equal(200, (await studio.Post("/v1/price-checks", Check)).Status); // single checks go on

        Assert.Equal(200, (await one.Ended()).Status);
        Assert.Equal(200, (await Probe()).Status); // one open and this one: exactly at the limit
        Assert.Contains("\"belowFloor\":1", (await two.Ended()).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_depth_of_JSON()
    {
        var studio = await AShop();
        string Deep(int levels) => $$"""{"savedAt":{{new string('[', levels)}}{{new string(']', levels)}},{{Sample.Shop[1..]}}""";
        Assert.Contains((await studio.Put("/v1/channels/web", Deep(31))).Status, s_stored); // with the object itself 32
        Assert.Equal(["malformed"], (await studio.Put("/v1/channels/web", Deep(32))).IsProblem(400, "unreadable-request").Codes);
    }

    [Theory]
    [InlineData("name", Limits.NameLength)]
    [InlineData("alias", Limits.AliasLength)]
    public async Task The_length_of_a_text(string what, int most)
    {
        var studio = await AShop();
        string Design(int length)
        {
            var text = new string('n', length);
            return $"{{{(what == "name" ? $"\"name\":\"{text}\"" : $"\"aliases\":[\"{text}\"]")},{Sample.Pendant[1..]}";
        }
        Assert.Contains((await studio.Put("/v1/designs/long", Design(most))).Status, s_stored);
        Assert.Equal(["too-long"], (await studio.Put("/v1/designs/long", Design(most + 1))).IsProblem(422, "invalid-input").Codes);
    }

    [Fact]
    public async Task The_length_of_a_key_and_of_a_query_parameter()
    {
        var studio = await AShop();
        string Key(int length) => new('k', length);
        Assert.Contains((await studio.Put($"/v1/profiles/{Key(64)}", Sample.SmallProfile)).Status, s_stored);
        Assert.Equal(["bad-key"], (await studio.Put($"/v1/profiles/{Key(65)}", Sample.SmallProfile)).IsProblem(422, "invalid-input").Codes);
        Assert.Equal(200, (await studio.Get($"/v1/profiles?after={Key(64)}")).Status);
        Assert.Equal(["too-long"], (await studio.Get($"/v1/profiles?after={Key(65)}")).IsProblem(422, "invalid-input").Codes);
    }

    [Theory]
    [InlineData("expenses", """{"amount":1,"per":"year"}""", Limits.Lines)]
    [InlineData("household", """{"amount":1,"per":"year"}""", Limits.Lines)]
    public async Task The_lines_of_a_list(string list, string line, int most)
    {
        var studio = await AShop();
        string Profile(int lines) =>
            $$"""{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"{{list}}":[{{string.Join(',', Enumerable.Repeat(line, lines))}}]}""";
        Assert.Contains((await studio.Put("/v1/profiles/lines", Profile(most))).Status, s_stored);
        foreach (var more in new[] { most + 1, 10_000 })
        {
            var answer = (await studio.Put("/v1/profiles/lines", Profile(more))).IsProblem(422, "invalid-input");
            Assert.Equal(("too-many", $"#/{list}"), (Assert.Single(answer.Codes), Assert.Single(answer.Pointers)));
        }
    }

    [Theory]
    [InlineData("1000000000000", 200, "")]
    [InlineData("1000000000000.01", 422, "out-of-range")]
    [InlineData("0000000000000000.58", 200, "")]
    [InlineData("123456789012345678", 422, "out-of-range")]
    [InlineData("1234567890123456789", 422, "too-many-digits")]
    [InlineData("58.001", 422, "too-many-decimals")]
    public async Task The_digits_of_a_number(string price, int status, string code)
    {
        var answer = await (await AShop()).Post("/v1/price-checks", $$"""{"sku":"RB-014","channel":"web","price":"{{price}}"}""");
        Assert.Equal((price, status), (price, answer.Status));
        if (status != 200)
            Assert.Equal([code], answer.Codes);
    }

    private async Task<Studio> AShop()
    {
        var studio = shared.Of("Production");
        await studio.HasASmallShop();
        return studio;
    }

    private static async Task<Studio> With(string setting, string value)
    {
        // The first thing stored must not be the limited one.
        var studio = new Studio(configure: host => host.UseSetting(setting, value));
        await studio.HasASmallShop();
        return studio;
    }

    /// <summary>A batch whose body has begun and does not end until the test ends it.</summary>
    private sealed class Open
    {
        private readonly Pipe _body = new();
        private readonly Task<HttpResponseMessage> _answer;

        public Open(Studio studio)
        {
            var request = new HttpRequestMessage(HttpMethod.Post, "/v1/price-checks/batch") { Content = new StreamContent(_body.Reader.AsStream()) };
            request.Content.Headers.TryAddWithoutValidation("Content-Type", "application/x-ndjson");
            _answer = studio.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, Studio.Cancellation);
        }

        public bool IsAnswered => _answer.IsCompleted;

        public async Task<Answer> Ended()
        {
            await _body.Writer.WriteAsync(Encoding.UTF8.GetBytes(Check), Studio.Cancellation);
            await _body.Writer.CompleteAsync();
            using var response = await _answer;
            return await Answer.Of(response);
        }
    }
}
