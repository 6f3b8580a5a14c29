using System.Globalization;
using System.Xml.Linq;
using PriceFloor.Api.Pictures;
using Xunit;

namespace PriceFloor.Api.Tests.Pictures;

/// <summary>What is true of every picture, whatever the studio.</summary>
public sealed class PictureTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    private static readonly string[] s_pictures =
        ["/v1/designs/RB-014/price-parts", "/v1/designs/RB-014/break-even?channel=web&planned=900", "/v1/designs/RB-014/floor-history?channel=web",
            "/v1/price-list?channel=web", "/v1/designs/RB-014/run-prices?channel=web",
            "/v1/profiles/main/year?planned=41000&received=9000.50", "/v1/plans/main/months"];

    private static readonly (string Path, string Body)[] s_asked =
    [
        ("/v1/what-ifs", """
            {"profile":"main","list":"all","combined":true,"scenarios":[
              {"name":"</text><script>alert(1)</script>","changes":[{"of":"main","at":"/expenses/0/amount","by":1.5}]},
              {"name":"WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW","changes":[{"of":"main","at":"/expenses/0/amount","by":0.01}]},
              {"changes":[]}]}
            """),
        ("/v1/sureness", """
            {"profile":"main","sku":"RB-014","draws":1024,"ranges":[
              {"of":"main","at":"/expenses/0/amount","by":{"low":0.1,"high":9}},
              {"of":"main","at":"/calendar/weeksPerYear","to":{"low":42,"high":51}}]}
            """),
        ("/v1/sureness", """
            {"profile":"main","draws":1024,"ranges":[
              {"of":"main","at":"/household/*/amount","by":{"low":0.9,"high":1.2},"together":"WWWWWWWWWWWWWWWWWWWWWWWWWWW"}]}
            """),
    ];

    [Fact]
    public async Task It_is_asked_for_by_Accept_or_by_its_suffix()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/plans/main", Sample.Plan);
        foreach (var path in s_pictures)
        {
            var drawn = await studio.Get(path, null, ("Accept", "image/svg+xml"));
            Assert.Equal((path, 200, "image/svg+xml", "Accept", "private, no-cache"),
                (path, drawn.Status, drawn.ContentType, drawn["Vary"], string.Join(", ", drawn["Cache-Control"]!.Split(", ").OrderDescending())));
            Assert.Equal("default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'",
                drawn["Content-Security-Policy"]);
            foreach (var accept in new[] { "application/json", "text/html", "image/avif,image/*,*/*;q=0.8" })
                Assert.Equal((accept, drawn.Text),
                    (accept, (await studio.Get(path.Replace("?", ".svg?", StringComparison.Ordinal) is var at && at == path ? path + ".svg" : at,
                        null, ("Accept", accept))).Text));
            var plain = await studio.Get(path);
            Assert.Equal(("application/json", "Accept"), (plain.ContentType, plain["Vary"]));
            Assert.Equal("application/json", (await studio.Get(path, null, ("Accept", "image/svg+xml;q=0.5, application/json"))).ContentType);
            Assert.Equal("image/svg+xml",
                (await studio.Get(path, null, ("Accept", "image/avif,image/webp,image/svg+xml,image/*,*/*;q=0.8"))).ContentType);
        }
    }

    [Fact]
    public async Task The_picture_of_a_question_that_is_sent_is_drawn_by_Accept_or_by_the_address_and_has_no_tag()
    {
        foreach (var (currency, scale) in new[] { ("USD", 1m), ("JPY", 150m), ("KWD", 0.31m), ("USD", 1_000_000m), ("KWD", 0.001m) })
        {
            await using var studio = await AHardStudio(currency, scale);
            foreach (var (path, body) in s_asked)
            {
                var drawn = await studio.Post(path + ".svg", body);
                Assert.True(drawn.Status == 200, drawn.Text);
                Assert.Equal(("image/svg+xml", null), (drawn.ContentType, drawn["ETag"]));
                IsAccessible(XDocument.Parse(drawn.Text).Root!);
                NothingRunsOut(XDocument.Parse(drawn.Text).Root!, $"{path} {currency} {scale}");
                Assert.DoesNotContain("<script", drawn.Text, StringComparison.Ordinal);
                var accepted = await studio.SendBytes("POST", path, System.Text.Encoding.UTF8.GetBytes(body), "application/json", null,
                    [("Accept", "image/svg+xml")]);
                Assert.Equal(drawn.Text, accepted.Text);
                Assert.Equal("application/json", (await studio.Post(path, body)).ContentType);
            }
        }
    }

    [Fact]
    public async Task It_has_a_tag_that_stays_as_long_as_the_picture()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/plans/main", Sample.Plan);
        foreach (var path in s_pictures)
        {
            var (one, two) = (await studio.Get(path, null, ("Accept", "image/svg+xml")), await studio.Get(path, null, ("Accept", "image/svg+xml")));
            Assert.Equal((one.Text, one["ETag"]), (two.Text, two["ETag"]));
            Assert.Equal(304, (await studio.Get(path, null, ("Accept", "image/svg+xml"), ("If-None-Match", one["ETag"]!))).Status);
        }

        var before = await studio.Get(s_pictures[0], null, ("Accept", "image/svg+xml"));
        await studio.Put("/v1/designs/RB-014/prices/web", """{"price":70}""");
        Assert.NotEqual(before["ETag"],
            (await studio.Get(s_pictures[0], null, ("Accept", "image/svg+xml"), ("If-None-Match", before["ETag"]!)))["ETag"]);
    }

    [Fact]
    public async Task The_problem_of_a_picture_is_JSON()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        (await studio.Get("/v1/designs/NOPE/price-parts.svg")).IsProblem(404, "not-found");
        (await studio.Get("/v1/designs/RB-014/break-even.svg?channel=web&price=0.25")).IsProblem(422, "cannot-compute");
        Assert.Equal(["channel"], (await studio.Get("/v1/price-list.svg")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["channel"], (await studio.Get("/v1/price-list.svg?channel=x")).IsProblem(422, "unknown-reference").Pointers);
        (await studio.Get("/v1/designs/RB-014/remedies?channel=web", null, ("Accept", "image/svg+xml"))).IsProblem(406, "not-acceptable");
        (await studio.Get("/v1/price-list.svg?channel=web", studio.ClientWith(null))).IsProblem(401, "no-key");
    }

    [Fact]
    public async Task Everyone_can_read_it_whatever_names_and_amounts_are_in_it()
    {
        foreach (var (currency, scale) in new[] { ("USD", 1m), ("JPY", 150m), ("KWD", 0.31m), ("USD", 1_000_000m), ("KWD", 0.001m) })
        {
            await using var studio = await AHardStudio(currency, scale);
            foreach (var path in s_pictures.Append("/v1/designs/RB-014/price-parts?channel=web&price=1"))
            {
                var drawn = await studio.Get(path, null, ("Accept", "image/svg+xml"));
                Assert.True(drawn.Status == 200, drawn.Text);
                IsAccessible(XDocument.Parse(drawn.Text).Root!);
                NothingRunsOut(XDocument.Parse(drawn.Text).Root!, $"{path} {currency} {scale}");
                Assert.DoesNotContain("<script", drawn.Text, StringComparison.Ordinal);
                Assert.DoesNotMatch("main@[0-9]", drawn.Text);
            }
        }
    }

    [Fact]
    public async Task The_histories_and_the_year_wrap_what_is_long_and_cut_nothing_off()
    {
        var name = string.Join(' ', Enumerable.Range(1, 30).Select(i => $"word{i}"));
        await using var studio = new Studio();
        string Profile(string amount) => $$"""
            {"name":"{{name}}","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},
            "expenses":[{"name":"{{name}}","amount":{{amount}},"per":"year","costKind":"{{LongestKind()}}"}]}
            """;
        await studio.Has("/v1/profiles/main", Profile("24000000000"));
        await studio.Has("/v1/designs/RB-014",
            Sample.Pendant.Replace("{\"profile\"", $"{{\"name\":\"{name}\",\"profile\"", StringComparison.Ordinal));
        await studio.Has("/v1/channels/web", Sample.Shop.Replace("{\"sells\"", $"{{\"name\":\"{name}\",\"sells\"", StringComparison.Ordinal));
        studio.Clock.Advance(TimeSpan.FromDays(9));
        await studio.Has("/v1/profiles/main", Profile("25000000000"));
        var history = XDocument.Parse((await studio.Get("/v1/designs/RB-014/floor-history.svg?channel=web")).Text).Root!;
        NothingRunsOut(history, "history");
        Assert.Equal(3, Count(Words(history), name)); // the design, the channel, and the expense that changed
        Assert.Contains($"expense {name}: 24,000,000,000.00 to 25,000,000,000.00 a year", Words(history), StringComparison.Ordinal);

        var year = XDocument.Parse((await studio.Get("/v1/profiles/main/year.svg?planned=20000000000&received=19999999999.99")).Text).Root!;
        NothingRunsOut(year, "year");
        Assert.Contains($"{name}, 2027-01-01 to 2027-12-31", Words(year), StringComparison.Ordinal);
        Assert.Contains($"a {LongestKind().Replace('-', ' ')}", Words(year), StringComparison.Ordinal);
        Assert.DoesNotContain("\u2026", Words(history) + Words(year), StringComparison.Ordinal);
    }

    private static string LongestKind() => Enum.GetValues<CostKind>().Where(kind => kind != CostKind.Depreciation)
        .Select(kind => System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(kind.ToString())).MaxBy(word => word.Length)!;

    private static string Words(XElement svg) => string.Join(' ', svg.Descendants(s_svg + "text").Select(text => text.Value));

    private static int Count(string text, string words) => text.Split(words).Length - 1;

    [Fact]
    public async Task Nothing_stored_for_it_still_draws()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Has("/v1/designs/RB-014", Sample.Pendant);
        Assert.Contains("No channel is stored.", (await studio.Get("/v1/designs/RB-014/price-parts.svg")).Text, StringComparison.Ordinal);
        await studio.Has("/v1/channels/abroad", """{"sells":"retail","currency":"EUR"}""");
        Assert.Contains("other currency", (await studio.Get("/v1/designs/RB-014/price-parts.svg")).Text, StringComparison.Ordinal);
        Assert.Contains("other currency", (await studio.Get("/v1/price-list.svg?channel=abroad")).Text, StringComparison.Ordinal);
        Assert.Contains("There was no price yet.", (await studio.Get("/v1/designs/RB-014/floor-history.svg?channel=abroad")).Text,
            StringComparison.Ordinal);
        await studio.Delete("/v1/designs/RB-014");
        Assert.Contains("No design is listed here.", (await studio.Get("/v1/price-list.svg?channel=abroad")).Text, StringComparison.Ordinal);
    }

    /// <summary>An image with a name and a description for screen readers, and with a style for dark.</summary>
    private static void IsAccessible(XElement svg)
    {
        Assert.Equal("img", svg.Attribute("role")!.Value);
        var named = svg.Attribute("aria-labelledby")!.Value.Split(' ')
            .Select(id => svg.Elements().Single(element => element.Attribute("id")?.Value == id)).ToList();
        Assert.Equal(["title", "desc"], named.Select(element => element.Name.LocalName));
        Assert.True(named[0].Value.Length > 10 && named[1].Value.Length > 60);
        Assert.Contains("@media (prefers-color-scheme:dark)", svg.Element(s_svg + "style")!.Value, StringComparison.Ordinal);
        // no colour but by class
        Assert.DoesNotContain(svg.Descendants().Attributes(),
            attribute => attribute.Name.LocalName is "fill" or "stroke" && attribute.Value.StartsWith('#'));
    }

    /// <summary>Every text, at its widest, is inside the picture.</summary>
    private static void NothingRunsOut(XElement svg, string what)
    {
        var height = Number(svg.Attribute("height")!);
        foreach (var text in svg.Descendants(s_svg + "text"))
        {
            var (x, y) = (Number(text.Attribute("x")!), Number(text.Attribute("y")!));
            var width = TextMetrics.Width(text.Value, Number(text.Attribute("font-size")!), text.Attribute("font-weight") is not null);
            var left = text.Attribute("text-anchor")?.Value switch { "end" => x - width, "middle" => x - width / 2, _ => x };
            Assert.True(left >= 0 && left + width <= Picture.Width + 0.5m && y > 10 && y < height - 2,
                $"{what}: \"{text.Value}\" at {left} to {left + width}, {y} of {height}");
        }
    }

    private static decimal Number(XAttribute attribute) => decimal.Parse(attribute.Value, CultureInfo.InvariantCulture);

    /// <summary>Names that are long, of another script and full of markup; amounts that are large or small.</summary>
    private static async Task<Studio> AHardStudio(string currency, decimal scale)
    {
        var studio = new Studio();
        string Amount(decimal amount) => (amount * scale).ToString("0.###", CultureInfo.InvariantCulture);
        await studio.Has("/v1/profiles/main",
            $$"""{"currency":"{{currency}}","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":{{Amount(24000)}},"per":"year"}],"household":[{"amount":{{Amount(3000)}},"per":"month"}],"tax":{"kind":"flat","rate":0.2} }""");
        foreach (var (sku, name) in new[]
        {
            ("RB-014", new string('W', 200)),
            ("A-1", "</text><script>alert(1)</script> & \\\"x\\\""),
            ("A-2", string.Concat(Enumerable.Repeat("\\u6c34\\u6ef4\\u306e\\u9996\\u98fe\\u308a", 4))),
            (new string('k', 64), "Plain"),
        })
            await studio.Has($"/v1/designs/{sku}",
                $$"""{"name":"{{name}}","profile":"main","making":{"piecesPerDay":4},"materials":[{"amount":{{Amount(3)}} }]}""");
        await studio.Has("/v1/channels/web",
            $$"""{"name":"{{new string('M', 150)}}","sells":"retail","currency":"{{currency}}","fees":[{"rate":0.03}],"salesTax":{"rate":0.2,"included":true},"shipping":{"charged":{{Amount(5)}},"cost":{{Amount(6)}},"returnCost":{{Amount(2)}} },"returns":{"share":0.1},"costPerPiece":{{Amount(1)}},"shopShare":0.1}""");
        await studio.Has("/v1/channels/other", """{"sells":"retail","currency":"EUR"}""");
        await studio.Has("/v1/designs/RB-014/prices/web",
            $$"""{"price":{{(currency == "JPY" ? "12000" : (200 * scale).ToString("0.##", CultureInfo.InvariantCulture))}} }""");
        await studio.Has("/v1/plans/main", Sample.Plan);
        return studio;
    }
}
