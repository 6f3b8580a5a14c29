using System.Globalization;
using PriceFloor.Storage;

namespace PriceFloor.Api.Audit;

/// <summary>How far back a reader of the trail has come, among what was done to documents and among what was done to keys: <c>120.5</c>.</summary>
public sealed record AuditPlace(long Documents, long Keys)
{
    public static readonly AuditPlace Newest = new(long.MaxValue, long.MaxValue);

    public string Text => string.Create(CultureInfo.InvariantCulture, $"{Documents}.{Keys}");

    public static AuditPlace? Read(string text) => text.Split('.') is [var documents, var keys]
        && long.TryParse(documents, NumberStyles.None, CultureInfo.InvariantCulture, out var document) && long.TryParse(keys, NumberStyles.None, CultureInfo.InvariantCulture, out var key)
        ? new(document, key) : null;

    /// <summary>The entries before this place, the newest first, and the place behind them; null where there are no more.</summary>
    public (IReadOnlyList<AuditEntry> Entries, AuditPlace? Next) Before(Snapshot snapshot, int limit)
    {
        var documents = snapshot.DocumentEntries(Documents, limit + 1).Select(entry => (AuditEntry: entry, IsKey: false));
        var keys = snapshot.KeyEntries(Keys, limit + 1).Select(entry => (AuditEntry: entry, IsKey: true));
        var all = documents.Concat(keys).OrderByDescending(one => one.AuditEntry.At).ThenBy(one => one.IsKey).ThenByDescending(one => one.AuditEntry.Position).ToList();
        var page = all.Take(limit).ToList();
        var last = new AuditPlace(page.LastOrDefault(one => !one.IsKey).AuditEntry?.Position ?? Documents, page.LastOrDefault(one => one.IsKey).AuditEntry?.Position ?? Keys);
        return ([.. page.Select(one => one.AuditEntry)], all.Count > limit ? last : null);
    }
}
