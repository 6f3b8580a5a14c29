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

    /// <summary>The deeds before this place, the newest first, and the place behind them; null where there are no more.</summary>
    public (IReadOnlyList<Deed> Deeds, AuditPlace? Next) Before(Snapshot snapshot, int limit)
    {
        var documents = snapshot.DocumentDeeds(Documents, limit + 1).Select(deed => (Deed: deed, IsKey: false));
        var keys = snapshot.KeyDeeds(Keys, limit + 1).Select(deed => (Deed: deed, IsKey: true));
        var all = documents.Concat(keys).OrderByDescending(one => one.Deed.At).ThenBy(one => one.IsKey).ThenByDescending(one => one.Deed.Position).ToList();
        var page = all.Take(limit).ToList();
        var last = new AuditPlace(page.LastOrDefault(one => !one.IsKey).Deed?.Position ?? Documents, page.LastOrDefault(one => one.IsKey).Deed?.Position ?? Keys);
        return ([.. page.Select(one => one.Deed)], all.Count > limit ? last : null);
    }
}
