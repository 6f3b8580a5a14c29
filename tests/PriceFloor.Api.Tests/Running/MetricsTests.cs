using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

public sealed class MetricsTests
{
    [Fact]
    public async Task They_are_off_unless_asked_for_and_need_a_key()
    {
        await using var closed = new Studio();
        (await closed.Get("/metrics")).IsProblem(404, "not-found");
        await using var studio = Watched();
        (await studio.Get("/metrics", studio.ClientWith(null))).IsProblem(401, "no-key");
        var answer = await studio.Get("/metrics", await studio.ClientFor("verdict"), ("Accept", "application/openmetrics-text;version=1.0.0;q=0.5,text/plain;version=0.0.4;q=0.3,*/*;q=0.1"));
        Assert.Equal((200, "text/plain", "no-store"), (answer.Status, answer.ContentType, answer["Cache-Control"]));
        Assert.Equal(200, (await studio.Get("/metrics", headers: ("Accept", "text/plain"))).Status);
    }

    [Fact]
    public async Task Requests_are_counted_by_method_route_and_status()
    {
        await using var studio = Watched();
        await studio.HasASmallShop();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Get("/v1/designs/RB-014");
        await studio.Get("/v1/designs/nope-1");
        await studio.Get("/v1/designs/nope-2");
        await studio.Send("HEAD", "/v1/designs/RB-014", null);
        await studio.Get("/somewhere/else");
        await studio.Get("/v1/profiles", studio.ClientWith("wrong"));
        foreach (var invented in new[] { "BREW", "BREWED" })
            await studio.Send(invented, "/v1/profiles", null);
        var metrics = await Metrics(studio);
        foreach (var (sample, count) in new[]
        {
            ("""pricefloor_requests_total{method="PUT",route="/v1/profiles/{key}",status="201"}""", 1),
            ("""pricefloor_requests_total{method="PUT",route="/v1/profiles/{key}",status="200"}""", 1),
            ("""pricefloor_requests_total{method="GET",route="/v1/designs/{sku}",status="200"}""", 1),
            ("""pricefloor_requests_total{method="GET",route="/v1/designs/{sku}",status="404"}""", 2),
            ("""pricefloor_requests_total{method="HEAD",route="/v1/designs/{sku}",status="200"}""", 1),
            ("""pricefloor_requests_total{method="GET",route="(none)",status="404"}""", 1),
            ("""pricefloor_requests_total{method="GET",route="/v1/profiles",status="401"}""", 1),
        })
            Assert.Equal((sample, count), (sample, metrics.GetValueOrDefault(sample)));
        Assert.Equal(2, metrics.Where(sample => sample.Key.StartsWith("pricefloor_requests_total{method=\"other\"", StringComparison.Ordinal)).Sum(sample => sample.Value));
    }

    [Fact]
    public async Task Checks_are_counted_by_verdict_one_by_one_and_in_batches()
    {
        await using var studio = Watched();
        await studio.HasASmallShop(); // floor price 61.74, target 120.00
        await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58");
        await studio.Post("/v1/price-checks", """{"sku":"RB-014","channel":"web","price":61.74}""");
        await studio.Get("/v1/price-checks?sku=nope&channel=web&price=58"); // no verdict
        const string Array = """[{"sku":"RB-014","channel":"web","price":58},{"sku":"RB-014","channel":"web","price":120},{"sku":"nope","channel":"web","price":120}]""";
        await studio.Post("/v1/price-checks/batch", Array);
        await studio.SendBytes("POST", "/v1/price-checks/batch", Encoding.UTF8.GetBytes("sku,channel,price\nRB-014,web,58\nRB-014,web,120\nRB-014,web,121\n"), "text/csv");
        var metrics = await Metrics(studio);
        // one alone, one of the array, one of the sheet; one alone; one of the array, two of the sheet
        Assert.Equal((3, 1, 3), (metrics["""pricefloor_price_checks_total{verdict="below-floor"}"""], metrics["""pricefloor_price_checks_total{verdict="below-target"}"""], metrics["""pricefloor_price_checks_total{verdict="meets-target"}"""]));
    }

    [Fact]
    public async Task The_store_and_the_newest_backup_are_measured()
    {
        await using var studio = Watched();
        await studio.HasASmallShop();
        var metrics = await Metrics(studio);
        Assert.Equal(4, metrics["pricefloor_revisions_total"]); // a profile, a design, a channel, a listed price
        Assert.Equal(new[] { "pricefloor.db", "pricefloor.db-wal" }.Sum(file => new FileInfo(Path.Combine(studio.Folder, file)).Length), metrics["pricefloor_store_bytes"]);
        Assert.DoesNotContain("pricefloor_backup_age_seconds", metrics.Keys);

        var folder = Directory.CreateDirectory(Path.Combine(studio.Folder, "backups")).FullName;
        foreach (var (name, hours) in new[] { ("old.db", 5), ("new.db", 2) })
        {
            await File.WriteAllTextAsync(Path.Combine(folder, name), "", Studio.Cancellation);
            File.SetLastWriteTimeUtc(Path.Combine(folder, name), studio.Clock.GetUtcNow().UtcDateTime.AddHours(-hours));
        }

        Assert.Equal(7200, (await Metrics(studio))["pricefloor_backup_age_seconds"]);
    }

    [Fact]
    public async Task No_cost_no_design_and_no_key_is_in_them()
    {
        await using var studio = Watched();
        await studio.HasASmallShop();
        await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58");
        await studio.Delete("/v1/keys/first-admin-key");
        var text = (await studio.Get("/metrics")).Text;
        foreach (var secret in new[] { "RB-014", "main", "24000", "61.74", "first-admin-key", Studio.AdminKey, "58.00", "USD" })
            Assert.DoesNotContain(secret, text, StringComparison.Ordinal);
    }

    private static Studio Watched() => new(configure: host => host.UseSetting("PRICEFLOOR_METRICS", "on"));

    /// <summary>Every sample; a line that is none, a family without its type or a sample told twice fails.</summary>
    private static async Task<Dictionary<string, long>> Metrics(Studio studio)
    {
        var (samples, family) = (new Dictionary<string, long>(), "");
        foreach (var line in (await studio.Get("/metrics")).Text.Split('\n', StringSplitOptions.RemoveEmptyEntries))
            if (Regex.Match(line, "^# TYPE ([a-z_]+) (counter|gauge)$") is { Success: true } type)
                family = type.Groups[1].Value;
            else if (!line.StartsWith("# HELP ", StringComparison.Ordinal))
            {
                var sample = Regex.Match(line, "^(([a-z_]+)(\\{[a-z]+=\"[^\"\\\\]*\"(,[a-z]+=\"[^\"\\\\]*\")*\\})?) ([0-9]+)$");
                Assert.True(sample.Success, line);
                Assert.Equal(family, sample.Groups[2].Value);
                samples.Add(sample.Groups[1].Value, long.Parse(sample.Groups[5].Value));
            }

        return samples;
    }
}
