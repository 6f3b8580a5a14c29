using System.Collections.Concurrent;
using System.Collections.Frozen;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.LogLines;
using PriceFloor.Evidence.Lines;
using PriceFloor.Storage;

namespace PriceFloor.Api.PriceChecks;

/// <summary>
/// Listed prices at which pieces are sold off: until their day, and while the log has fewer sold than were meant. What was counted in the log is kept
/// until the log is another.
/// </summary>
public sealed class ClearingPrices(Store store)
{
    private const int MostKept = 10_000;

    private readonly ConcurrentDictionary<string, Sold> _kept = new(StringComparer.Ordinal);

    /// <summary>Whether a listed price clears pieces on a day, as far as its document says.</summary>
    internal static bool MayClear(ListedPrice? listed, DateOnly today) => listed?.Clears is { } clears && today <= clears.Until;

    /// <summary>Whether fewer pieces than said were sold since the listed price was stored.</summary>
    internal ValueTask<bool> IsOpen(Stored<ListedPrice> listed, DateTimeOffset? asOf)
    {
        var point = store.LogPoint; // before anything is read
        return asOf is null && point is { } now && Find(listed, now) is { } pieces ? new(IsOpen(listed, pieces))
            : store.ReadAsync(snapshot => IsOpen(snapshot, listed, asOf, point));
    }

    /// <summary>The keys of all listed prices that clear pieces; mostly there is none, and nothing is read for that.</summary>
    internal async ValueTask<IReadOnlySet<string>> OpenIn(WholeCatalogue catalogue, DateTimeOffset? asOf)
    {
        var listed = catalogue.Clearing.Where(price => MayClear(price.Sound!, catalogue.Today)).ToList();
        var point = store.LogPoint;
        return listed.Count == 0 ? FrozenSet<string>.Empty : await store.ReadAsync(async snapshot =>
        {
            var open = new HashSet<string>(StringComparer.Ordinal);
            foreach (var price in listed)
                if (await IsOpen(snapshot, price, asOf, point))
                    open.Add(price.Key);
            return open;
        });
    }

    private static bool IsOpen(Stored<ListedPrice> listed, long pieces) => pieces < listed.Document.Clears!.Pieces;

    private async ValueTask<bool> IsOpen(Snapshot snapshot, Stored<ListedPrice> listed, DateTimeOffset? asOf, LogPoint? point)
    {
        var end = await snapshot.LogPosition(asOf is { } time ? Moment.Of(time) : null);
        if (asOf is not null)
            return IsOpen(listed, await Count(snapshot, listed, end));
        var now = point ?? new LogPoint(snapshot.HistoryName, end.Movements);
        if (Find(listed, now) is not { } pieces)
            Keep(listed, now, pieces = await Count(snapshot, listed, end));
        return IsOpen(listed, pieces);
    }

    private static async ValueTask<long> Count(Snapshot snapshot, Stored<ListedPrice> listed, LogPosition end)
    {
        var key = ListedPriceKey.Of(listed.Key);
        var revision = (await snapshot.History(Kinds.ListedPrice, listed.Key, listed.Revision!.Value - 1, 1))[0];
        var since = DateOnly.FromDateTime(revision.SavedAtTime.UtcDateTime);
        var question = new LogQuestion { UpTo = end.Movements, Design = key.Sku, Place = key.Channel, From = since.DayNumber };
        var sold = (await snapshot.Movements(question)).Where(line => StoredLines.KindOf(line.What) == MovementKind.Sold);
        return sold.Sum(line => (long)line.Pieces);
    }

    private long? Find(Stored<ListedPrice> listed, LogPoint now) =>
        _kept.TryGetValue(listed.Key, out var sold) && sold.Point == now && sold.Revision == listed.Revision ? sold.Pieces : null;

    private void Keep(Stored<ListedPrice> listed, LogPoint now, long pieces)
    {
        if (!_kept.ContainsKey(listed.Key) && _kept.Count >= MostKept)
            _kept.Clear();
        _kept[listed.Key] = new Sold(now, listed.Revision, pieces);
    }

    /// <summary>How many pieces were sold since a revision of a listed price was stored, as the log stood.</summary>
    private sealed record Sold(LogPoint Point, long? Revision, long Pieces);
}
