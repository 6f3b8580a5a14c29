using System.Collections.Frozen;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.LogLines;
using PriceFloor.Evidence.Lines;
using PriceFloor.Storage;

namespace PriceFloor.Api.PriceChecks;

/// <summary>Listed prices at which pieces are sold off: until their day, and while the log has fewer sold than were meant.</summary>
internal static class ClearingPrices
{
    /// <summary>Whether a listed price clears pieces on a day, as far as its document says.</summary>
    public static bool MayClear(this ListedPrice listed, DateOnly today) => listed.Clears is { } clears && today <= clears.Until;

    /// <summary>Whether fewer pieces than said were sold since the listed price was stored.</summary>
    public static ValueTask<bool> IsOpen(Store store, Stored<ListedPrice> listed, DateTimeOffset? asOf) =>
        store.ReadAsync(snapshot => IsOpen(snapshot, listed, asOf));

    /// <summary>The keys of all listed prices that clear pieces; mostly there is none, and nothing is read for that.</summary>
    public static async ValueTask<IReadOnlySet<string>> OpenIn(Store store, WholeCatalogue catalogue, DateTimeOffset? asOf)
    {
        var listed = catalogue.Clearing.Where(price => price.Sound!.MayClear(catalogue.Today)).ToList();
        return listed.Count == 0 ? FrozenSet<string>.Empty : await store.ReadAsync(async snapshot =>
        {
            var open = new HashSet<string>(StringComparer.Ordinal);
            foreach (var price in listed)
                if (await IsOpen(snapshot, price, asOf))
                    open.Add(price.Key);
            return open;
        });
    }

    private static async ValueTask<bool> IsOpen(Snapshot snapshot, Stored<ListedPrice> listed, DateTimeOffset? asOf)
    {
        var (key, clears) = (ListedPriceKey.Of(listed.Key), listed.Document.Clears!);
        var revision = (await snapshot.History(Kinds.ListedPrice, listed.Key, listed.Revision!.Value - 1, 1))[0];
        var since = DateOnly.FromDateTime(revision.SavedAtTime.UtcDateTime);
        var end = await snapshot.LogPosition(asOf is { } time ? Moment.Of(time) : null);
        var question = new LogQuestion { UpTo = end.Movements, Design = key.Sku, Place = key.Channel, From = since.DayNumber };
        var sold = (await snapshot.Movements(question)).Where(line => StoredLines.KindOf(line.What) == MovementKind.Sold);
        return sold.Sum(line => (long)line.Pieces) < clears.Pieces;
    }
}
