using System.Globalization;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence;

/// <summary>What the store remembers of designs and listed prices on days that have passed.</summary>
public sealed class StoredHistory
{
    private readonly Dictionary<string, DateOnly> _madeSoSince = new(StringComparer.Ordinal);
    private readonly Dictionary<(string, string), List<(DateOnly Day, decimal? Price)>> _listed = [];

    private StoredHistory()
    {
    }

    /// <summary>The first day of the present steps, where there were others before; null: there never were.</summary>
    public DateOnly? MadeSoSince(string sku) => _madeSoSince.TryGetValue(sku, out var day) ? day : null;

    /// <summary>The price listed at the end of a day; null where none was.</summary>
    public decimal? Listed(string sku, string channel, DateOnly day) =>
        _listed.GetValueOrDefault((sku, channel))?.FindLast(price => price.Day <= day).Price;

    /// <summary>What was listed from which day on, in order; null: no longer.</summary>
    public IReadOnlyList<(DateOnly Day, decimal? Price)> PricesOf(string sku, string channel) => _listed.GetValueOrDefault((sku, channel)) ?? [];

    /// <param name="snapshot">The store.</param>
    /// <param name="designs">The designs whose steps matter.</param>
    /// <param name="prices">The designs and channels whose listed prices matter.</param>
    /// <param name="asOf">Nothing later counts.</param>
    public static async ValueTask<StoredHistory> OfAsync(Snapshot snapshot, IEnumerable<string> designs, IEnumerable<(string Sku,
        string Channel)> prices,
        DateTimeOffset? asOf)
    {
        var (history, moment) = (new StoredHistory(), asOf is { } time ? Moment.Of(time) : (long?)null);
        foreach (var sku in designs)
            history.Follow(sku, await snapshot.History(Kinds.Design, sku, asOf: moment));
        foreach (var (sku, channel) in prices)
            history._listed[(sku, channel)] =
            [
                .. (await snapshot.History(Kinds.ListedPrice, new ListedPriceKey(sku, channel).ToString(), asOf: moment))
                    .Select(revision => (DayOf(revision), revision.Body is { } body ? StoredText<ListedPrice>.Read(body).Document?.Price : null)),
            ];
        return history;
    }

    private void Follow(string sku, List<Revision> revisions)
    {
        if (revisions.Count < 2)
            return;
        string? former = null;
        foreach (var revision in revisions.OrderBy(revision => revision.Number))
            if (revision.Body is { } body && StoredText<Design>.Read(body).Document is { } design)
            {
                var steps = StepsOf(design);
                if (former is not null && former != steps)
                    _madeSoSince[sku] = DayOf(revision);
                former = steps;
            }
    }

    /// <summary>
    /// What a log of before would not fit: names, kilns, and whether a step is done by loads. Figures may change, also a load's size.
    /// </summary>
    private static string StepsOf(Design design) => string.Join('\n', (design.Making.Steps ?? [])
        .Select(step => string.Create(CultureInfo.InvariantCulture, $"{step.Name}\t{step.BatchSize > 1}\t{step.Uses}")));

    private static DateOnly DayOf(Revision revision) => DateOnly.FromDateTime(revision.SavedAtTime.UtcDateTime);
}
