using System.Globalization;
using System.Text;
using PriceFloor.Api.Backups;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.FirstContact;
using PriceFloor.Api.Http;
using PriceFloor.Api.Telemetry;
using PriceFloor.Storage;

namespace PriceFloor.Api.Metrics;

/// <summary>/metrics in the text format of Prometheus (0.0.4): counts and sizes, no costs, no names of designs or keys.</summary>
public static class MetricsPage
{
    private const string Seconds = "pricefloor_request_duration_seconds";

    public static readonly Format Text = new("text/plain", "text/plain; version=0.0.4; charset=utf-8");

    public static IResult Get(ServiceCounts counts, Store store, BackupFolder backups, Settings settings, TimeProvider clock, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        var text = new StringBuilder();
        OfProgram(text, VersionAnswer.On(settings.Store));
        OfRequests(text, counts);
        OfStore(text, store, settings);
        OfBackups(text, counts, backups, NewestBackup(settings), clock.GetUtcNow());
        return TypedResults.Content(text.ToString(), Text.ContentType);
    }

    private static void OfProgram(StringBuilder text, VersionAnswer here)
    {
        Family(text, "pricefloor_build_info", "gauge", "What runs here; always 1.",
            [(string.Create(CultureInfo.InvariantCulture, $"{{version=\"{here.Version}\",commit=\"{here.Commit}\",runtime=\"{here.Runtime}\","
                + $"schema=\"{here.Schema}\",contract=\"{here.Contract}\"}}"), 1)]);
        Family(text, "pricefloor_process_memory_bytes", "gauge", "Memory that the process holds.", [("", Environment.WorkingSet)]);
    }

    private static void OfRequests(StringBuilder text, ServiceCounts counts)
    {
        Family(text, "pricefloor_requests_total", "counter", "Requests by method, route and status.",
            counts.Requests.Select(request => (string.Create(CultureInfo.InvariantCulture,
                $"{{method=\"{request.Method}\",route=\"{request.Route}\",status=\"{request.Status}\"}}"), request.Count)));
        Family(text, Seconds, "histogram", "Duration of requests by method, route and class of status.", []);
        foreach (var (method, route, status, upTo, count, seconds) in counts.Durations.All)
        {
            var labels = $"method=\"{method}\",route=\"{route}\",status=\"{status}\"";
            foreach (var (bound, within) in Durations.Bounds.Zip(upTo))
                text.Append(CultureInfo.InvariantCulture, $"{Seconds}_bucket{{{labels},le=\"{bound}\"}} {within}\n");
            text.Append(CultureInfo.InvariantCulture,
                $"{Seconds}_bucket{{{labels},le=\"+Inf\"}} {count}\n{Seconds}_sum{{{labels}}} {seconds}\n{Seconds}_count{{{labels}}} {count}\n");
        }

        if (counts.Studios.ToList() is { Count: > 0 } studios)
            Family(text, "pricefloor_studio_requests_total", "counter", "Requests by studio: the 50 busiest, and all others.",
                studios.Select(one => ($"{{studio=\"{one.Studio}\"}}", one.Count)));
        Family(text, "pricefloor_price_checks_total", "counter", "Prices checked by verdict.",
            counts.Checks.Select(check => ($"{{verdict=\"{KebabWords.Of(check.Verdict)}\"}}", check.Count)));
    }

    private static void OfStore(StringBuilder text, Store store, Settings settings)
    {
        Family(text, "pricefloor_revisions_total", "counter", "Revisions ever written to the store.", [("", store.Position)]);
        Family(text, "pricefloor_store_bytes", "gauge", "Size of the store's files.", [("", store.Bytes)]);
        Family(text, "pricefloor_data_free_bytes", "gauge", "Free space on the data folder's disk.",
            [("", new DriveInfo(Path.GetFullPath(settings.DataFolder)).AvailableFreeSpace)]);
    }

    private static void OfBackups(StringBuilder text, ServiceCounts counts, BackupFolder backups, DateTimeOffset? newest, DateTimeOffset now)
    {
        Family(text, "pricefloor_backups_failed_total", "counter", "Backups into the data folder that have failed since the start.",
            [("", counts.FailedBackups)]);
        if (backups.Newest is { } good)
            Family(text, "pricefloor_backup_last_good_seconds", "gauge", "When the newest backup in the data folder was made, in seconds since 1970.",
                [("", good.ToUnixTimeSeconds())]);
        if (newest is { } made)
            Family(text, "pricefloor_backup_age_seconds", "gauge", "Seconds since the newest backup in the data folder was made.",
                [("", long.Max(0, (long)(now - made).TotalSeconds))]);
    }

    private static void Family(StringBuilder text, string name, string type, string help, IEnumerable<(string Labels, long Value)> samples)
    {
        text.Append(CultureInfo.InvariantCulture, $"# HELP {name} {help}\n# TYPE {name} {type}\n");
        foreach (var (labels, value) in samples)
            text.Append(CultureInfo.InvariantCulture, $"{name}{labels} {value}\n");
    }

    private static DateTimeOffset? NewestBackup(Settings settings)
    {
        var folder = new DirectoryInfo(Path.Combine(settings.DataFolder, "backups"));
        return folder.Exists ? folder.EnumerateFiles("*.db").Max(file => (DateTimeOffset?)file.LastWriteTimeUtc) : null;
    }
}
