using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using PriceFloor.Api.FirstContact;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Running;
using PriceFloor.Api.Telemetry;
using PriceFloor.Api.Tests.Conventions;
using PriceFloor.Api.Tests.ManyStudios;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

public sealed partial class MetricsTests
{
    private static readonly string[] s_storeFiles = ["pricefloor.db", "pricefloor.db-wal"];

    [Fact]
    public async Task They_are_off_unless_asked_for_and_need_a_key()
    {
        await using var closed = new Studio();
        (await closed.Get("/metrics")).IsProblem(404, "not-found");
        await using var studio = Watched();
        (await studio.Get("/metrics", studio.ClientWith(null))).IsProblem(401, "no-key");
        var answer = await studio.Get("/metrics", await studio.ClientFor("verdict"),
            ("Accept", "application/openmetrics-text;version=1.0.0;q=0.5,text/plain;version=0.0.4;q=0.3,*/*;q=0.1"));
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
        Assert.Equal(2, metrics.Where(sample => sample.Key.StartsWith("pricefloor_requests_total{method=\"other\"", StringComparison.Ordinal))
            .Sum(sample => sample.Value));
    }

    [Fact]
    public async Task Checks_are_counted_by_verdict_one_by_one_and_in_batches()
    {
        await using var studio = Watched();
        await studio.HasASmallShop(); // floor price 61.74, target 120.00
        await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58");
        await studio.Post("/v1/price-checks", """{"sku":"RB-014","channel":"web","price":61.74}""");
        await studio.Get("/v1/price-checks?sku=nope&channel=web&price=58"); // no verdict
        const string Array =
            """[{"sku":"RB-014","channel":"web","price":58},{"sku":"RB-014","channel":"web","price":120},{"sku":"nope","channel":"web","price":120}]""";
        await studio.Post("/v1/price-checks/batch", Array);
        await studio.SendBytes("POST", "/v1/price-checks/batch",
            Encoding.UTF8.GetBytes("sku,channel,price\nRB-014,web,58\nRB-014,web,120\nRB-014,web,121\n"), "text/csv");
        var metrics = await Metrics(studio);
        // one alone, one of the array, one of the sheet; one alone; one of the array, two of the sheet
        Assert.Equal((3, 1, 3), (metrics["""pricefloor_price_checks_total{verdict="below-floor"}"""],
            metrics["""pricefloor_price_checks_total{verdict="below-target"}"""],
            metrics["""pricefloor_price_checks_total{verdict="meets-target"}"""]));
    }

    [Fact]
    public async Task The_store_and_the_newest_backup_are_measured()
    {
        await using var studio = Watched();
        await studio.HasASmallShop();
        var metrics = await Metrics(studio);
        Assert.Equal(4, metrics["pricefloor_revisions_total"]); // a profile, a design, a channel, a listed price
        Assert.Equal(s_storeFiles.Sum(file => new FileInfo(Path.Combine(studio.Folder, file)).Length),
            metrics["pricefloor_store_bytes"]);
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

    [Fact]
    public async Task The_version_and_the_free_space_are_reported()
    {
        await using var studio = Watched();
        var metrics = await Metrics(studio);
        var here = VersionAnswer.Here;
        Assert.Equal(1, metrics[
            $$"""pricefloor_build_info{version="{{here.Version}}",commit="{{here.Commit}}",runtime="{{here.Runtime}}",schema="{{Migrations.Newest}}",contract="1"}"""]);
        Assert.InRange(metrics["pricefloor_process_memory_bytes"], 10_000_000, 10_000_000_000);
        Assert.InRange(metrics["pricefloor_data_free_bytes"], 1, new DriveInfo(studio.Folder).TotalSize);
    }

    [Fact]
    public async Task Durations_are_counted_by_method_route_and_class_of_status()
    {
        await using var studio = Watched();
        await studio.HasASmallShop();
        await studio.Get("/v1/designs/RB-014");
        await studio.Get("/v1/designs/RB-014");
        await studio.Get("/v1/designs/nope-1");
        await studio.Get("/v1/designs/x", studio.ClientWith(null));
        var metrics = await Metrics(studio);
        foreach (var (status, count) in new[] { ("2xx", 2), ("4xx", 2) })
        {
            string Name(string part, string more = "") =>
                $$"""pricefloor_request_duration_seconds_{{part}}{method="GET",route="/v1/designs/{sku}",status="{{status}}"{{more}}}""";
            Assert.Equal(count, metrics[Name("count")]);
            Assert.Equal(0, metrics[Name("sum")]); // the clock stands
            foreach (var bound in new[] { "0.001", "0.005", "0.025", "0.1", "0.5", "2.5", "10", "+Inf" })
                Assert.Equal(count, metrics[Name("bucket", $",le=\"{bound}\"")]);
        }
    }

    [Fact]
    public void A_duration_counts_under_every_bound_that_it_does_not_pass()
    {
        var durations = new Durations();
        foreach (var microseconds in new[] { 1000, 1001, 5000, 60_000, 10_000_000, 10_001_000 })
            durations.Add("GET", "/", 200, TimeSpan.FromMicroseconds(microseconds));
        var (_, _, status, upTo, count, seconds) = Assert.Single(durations.All);
        Assert.Equal([1, 3, 3, 4, 4, 4, 5], upTo); // 1, 5, 25, 100, 500, 2500, 10000 ms
        Assert.Equal(("2xx", 6L, 20.068001m), (status, count, seconds));
    }

    [Fact]
    public async Task Backups_that_failed_are_counted_and_the_last_good_one_is_dated()
    {
        await using var studio = Watched();
        Assert.DoesNotContain("pricefloor_backup_last_good_seconds", (await Metrics(studio)).Keys);
        var made = studio.Clock.GetUtcNow().ToUnixTimeSeconds();
        Assert.Equal(201, (await studio.Send("POST", "/v1/backups", null)).Status);
        studio.Clock.Advance(TimeSpan.FromHours(1));
        var folder = Path.Combine(studio.Folder, "backups");
        Directory.Move(folder, folder + "-away");
        await File.WriteAllTextAsync(folder, "", Studio.Cancellation);
        (await studio.Send("POST", "/v1/backups", null)).IsProblem(503, "busy");
        File.Delete(folder);
        Directory.Move(folder + "-away", folder);
        var metrics = await Metrics(studio);
        Assert.Equal((1, made), (metrics["pricefloor_backups_failed_total"], metrics["pricefloor_backup_last_good_seconds"]));
    }

    [Fact]
    public async Task Each_has_its_row_in_the_docs_with_its_kind_and_labels()
    {
        await using var studio = Watched();
        await studio.HasASmallShop();
        Assert.Equal(201, (await studio.Send("POST", "/v1/backups", null)).Status);
        await using var host = HostedService.Start(with => with.UseSetting("PRICEFLOOR_METRICS", "on"));
        await host.Get("/v1/version", await host.HasStudio("harbour"));
        var text = (await studio.Get("/metrics")).Text + (await host.Get("/metrics")).Text;
        var told = text.Split('\n').Where(line => line.StartsWith("# TYPE ", StringComparison.Ordinal)).Select(line => line.Split(' '))
            .Select(type => $"`{type[2]}` | {type[3]} ").Distinct();
        var rows = (await File.ReadAllLinesAsync(Repository.File("docs/running.md"), Studio.Cancellation))
            .Where(line => line.StartsWith("| `pricefloor_", StringComparison.Ordinal));
        Assert.Equal(told.Order(StringComparer.Ordinal),
            rows.Select(row => string.Join('|', row.Split('|')[1..3])[1..]).Order(StringComparer.Ordinal));
        var bounds = string.Join(", ", Durations.Bounds.Select(bound => bound.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Contains(bounds, await File.ReadAllTextAsync(Repository.File("docs/running.md"), Studio.Cancellation), StringComparison.Ordinal);
    }

    private static Studio Watched() => new(configure: host => host.UseSetting("PRICEFLOOR_METRICS", "on"));

    /// <summary>Every sample; an invalid line, a family without its type or a duplicate sample fails.</summary>
    private static async Task<Dictionary<string, decimal>> Metrics(Studio studio)
    {
        var (samples, family, isHistogram) = (new Dictionary<string, decimal>(), "", false);
        foreach (var line in (await studio.Get("/metrics")).Text.Split('\n', StringSplitOptions.RemoveEmptyEntries))
            if (TypeLine().Match(line) is { Success: true } type)
                (family, isHistogram) = (type.Groups["family"].Value, type.Groups["type"].Value == "histogram");
            else if (!line.StartsWith("# HELP ", StringComparison.Ordinal))
            {
                var sample = SampleLine().Match(line);
                Assert.True(sample.Success, line);
                Assert.Contains(sample.Groups["name"].Value,
                    isHistogram ? [family + "_bucket", family + "_sum", family + "_count"] : new[] { family });
                samples.Add(sample.Groups["series"].Value, decimal.Parse(sample.Groups["value"].Value, CultureInfo.InvariantCulture));
            }

        return samples;
    }

    [GeneratedRegex("^# TYPE (?<family>[a-z_]+) (?<type>counter|gauge|histogram)$", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex TypeLine();

    [GeneratedRegex("^(?<series>(?<name>[a-z_]+)(\\{[a-z]+=\"[^\"\\\\]*\"(,[a-z]+=\"[^\"\\\\]*\")*\\})?) (?<value>[0-9]+([.][0-9]+)?)$",
        RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex SampleLine();
}
