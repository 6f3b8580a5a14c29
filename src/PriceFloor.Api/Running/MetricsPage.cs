using System.Globalization;
using System.Text;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Running;

/// <summary>/metrics in the text format of Prometheus (0.0.4): counts and sizes, no costs, no names of designs or keys.</summary>
public static class MetricsPage
{
    public static readonly Format Text = new("text/plain", "text/plain; version=0.0.4; charset=utf-8");

    public static IResult Get(ServiceCounts counts, Store store, Settings settings, TimeProvider clock, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        var text = new StringBuilder();
        Family(text, "pricefloor_requests_total", "counter", "Requests by method, route and status.",
            counts.Requests.Select(request => (string.Create(CultureInfo.InvariantCulture, $"{{method=\"{request.Method}\",route=\"{request.Route}\",status=\"{request.Status}\"}}"), request.Count)));
        Family(text, "pricefloor_price_checks_total", "counter", "Prices checked by verdict.",
            counts.Checks.Select(check => ($"{{verdict=\"{KebabWords.Of(check.Verdict)}\"}}", check.Count)));
        Family(text, "pricefloor_revisions_total", "counter", "Revisions ever written to the store.", [("", store.Position)]);
        Family(text, "pricefloor_store_bytes", "gauge", "Size of the store's files.", [("", SizeOf(store.Path) + SizeOf(store.Path + "-wal"))]);
        if (NewestBackup(settings) is { } made)
            Family(text, "pricefloor_backup_age_seconds", "gauge", "Since the newest backup in the data folder was made.", [("", long.Max(0, (long)(clock.GetUtcNow() - made).TotalSeconds))]);
        return TypedResults.Content(text.ToString(), Text.ContentType);
    }

    private static void Family(StringBuilder text, string name, string type, string help, IEnumerable<(string Labels, long Value)> samples)
    {
        text.Append(CultureInfo.InvariantCulture, $"# HELP {name} {help}\n# TYPE {name} {type}\n");
        foreach (var (labels, value) in samples)
            text.Append(CultureInfo.InvariantCulture, $"{name}{labels} {value}\n");
    }

    private static long SizeOf(string path) => new FileInfo(path) is { Exists: true } file ? file.Length : 0;

    private static DateTimeOffset? NewestBackup(Settings settings)
    {
        var folder = new DirectoryInfo(Path.Combine(settings.DataFolder, "backups"));
        return folder.Exists ? folder.EnumerateFiles("*.db").Max(file => (DateTimeOffset?)file.LastWriteTimeUtc) : null;
    }
}
