using System.Globalization;
using PriceFloor.Storage;

namespace PriceFloor.Api.Audit;

/// <summary>How far back a reader of the trail has come, in the entries about documents and in all others: <c>120.5</c>.</summary>
public sealed record AuditPlace(long Documents, long Others)
{
    public static readonly AuditPlace Newest = new(long.MaxValue, long.MaxValue);

    public string Text => string.Create(CultureInfo.InvariantCulture, $"{Documents}.{Others}");

    public static AuditPlace? Read(string text) => text.Split('.') is [var documents, var others]
        && long.TryParse(documents, NumberStyles.None, CultureInfo.InvariantCulture, out var document)
        && long.TryParse(others, NumberStyles.None, CultureInfo.InvariantCulture, out var other)
        ? new(document, other) : null;

    /// <summary>The entries before this place, newest first, and the place after them; null if there are no more.</summary>
    public async ValueTask<(IReadOnlyList<AuditEntry> Entries, AuditPlace? Next)> Before(Snapshot snapshot, int limit)
    {
        var documents = (await snapshot.DocumentEntries(Documents, limit + 1)).Select(entry => (AuditEntry: entry, IsOther: false));
        var others = (await snapshot.OtherEntries(Others, limit + 1)).Select(entry => (AuditEntry: entry, IsOther: true));
        var all = documents.Concat(others).OrderByDescending(one => one.AuditEntry.At).ThenBy(one => one.IsOther)
            .ThenByDescending(one => one.AuditEntry.Position).ToList();
        var page = all.Take(limit).ToList();
        var last = new AuditPlace(page.LastOrDefault(one => !one.IsOther).AuditEntry?.Position ?? Documents,
            page.LastOrDefault(one => one.IsOther).AuditEntry?.Position ?? Others);
        return ([.. page.Select(one => one.AuditEntry)], all.Count > limit ? last : null);
    }
}
