using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.PriceLists;
using PriceFloor.Storage;

namespace PriceFloor.Api.FloorHistories;

/// <summary>
/// The floor of one design on one channel at every moment at which a document behind it was written: the design, its profiles, the channel, its
/// listed prices, and the channels on which it was listed (a listed wholesale price sets the target). Only the newest moments are examined, so a long
/// history costs no more than a short one.
/// </summary>
public static class PricedMoments
{
    /// <param name="snapshot">The store.</param>
    /// <param name="sku">Key of the design.</param>
    /// <param name="channel">Key of the channel.</param>
    /// <param name="upTo">The last moment.</param>
    /// <param name="most">The maximum number of moments.</param>
    /// <param name="access">What the caller sees: while the design used another profile, it did not exist for the caller.</param>
    /// <returns>The moments in order, and the last one before them if there are more.</returns>
    public static async ValueTask<(IReadOnlyList<PricedMoment> Moments, long? Earlier)> Of(Snapshot snapshot, string sku, string channel,
        long upTo, int most, ProfileAccess access)
    {
        var behind = await DocumentsBehind(snapshot, sku, channel, upTo, most);
        var newest = new List<Revision>();
        foreach (var document in behind)
            newest.AddRange(await snapshot.Latest(document, most + 1, upTo: upTo));
        var times = newest.Select(revision => revision.SavedAt).Distinct().OrderDescending().Take(most + 1).ToList();
        if (times.Count == 0)
            return ([], null);
        var (earlier, first) = times.Count > most ? (times[most], times[most - 1]) : ((long?)null, times[^1]);

        var standing = new List<Revision>();
        foreach (var document in behind)
            if (await snapshot.Find(document.Kind, document.Key, first - 1) is { } found)
                standing.Add(found);
        var catalogue = WholeCatalogue.Of(standing, access, Moment.ToTime(first));
        var moments = new List<PricedMoment>();
        foreach (var written in newest.Where(revision => revision.SavedAt >= first).OrderBy(revision => revision.Position)
            .GroupBy(revision => revision.SavedAt))
        {
            var (before, seen) = (catalogue, await access.Seen(snapshot, written));
            catalogue = catalogue.After([.. written], written.Last().Position, Moment.ToTime(written.Key));
            moments.Add(At(catalogue, sku, channel, seen) with { At = written.Key, Changed = WrittenDifferences.Of(before, catalogue, seen) });
        }

        return (moments, earlier);
    }

    private static PricedMoment At(Catalogue catalogue, string sku, string channel, IReadOnlyList<Revision> written)
    {
        var names = written.Select(revision =>
            FormattableString.Invariant($"{revision.Key}@{revision.Number}{(revision.IsDeletion ? ": deleted" : "")}")).ToList();
        if (catalogue.Design(sku) is not { } design || catalogue.Channel(channel) is not { } on)
            return new PricedMoment(0, null, null, [], names);
        var basis = new[]
        {
            design.Sound is { } document ? catalogue.Profile(document.Profile)?.Basis : null,
            design.Basis,
            on.Basis,
            catalogue.ListedPrices(sku).GetValueOrDefault(channel) is { } listed ? $"{sku}/{listed.Basis.Split('/')[^1]}" : null,
        };
        return new PricedMoment(0, PricedDesign.Of(catalogue, design, on), on.Sound?.Currency, [.. basis.OfType<string>()], names);
    }

    private static async ValueTask<List<DocumentName>> DocumentsBehind(Snapshot snapshot, string sku, string channel, long upTo, int most)
    {
        var itself = new DocumentName(Kinds.Design, sku);
        var listed = (await snapshot.KeysEver(Kinds.ListedPrice, ListedPriceKey.Beginning(sku)))
            .Where(key => ListedPriceKey.Of(key).Alias is null).ToList();
        var profiles = (await snapshot.Latest(itself, most + 1, upTo: upTo)).Where(revision => !revision.IsDeletion)
            .Select(revision => Stored<Design>.Of(revision).Sound?.Profile).OfType<string>().Distinct();
        var channels = listed.Select(key => ListedPriceKey.Of(key).Channel).Append(channel).Distinct();
        return
        [
            itself,
            .. profiles.Select(profile => new DocumentName(Kinds.Profile, profile)),
            .. channels.Select(key => new DocumentName(Kinds.Channel, key)),
            .. listed.Select(key => new DocumentName(Kinds.ListedPrice, key)),
        ];
    }
}

/// <summary>A design's prices on a channel from a moment on, and the documents that were written at it.</summary>
/// <param name="At">When, in microseconds since 1970 UTC.</param>
/// <param name="Priced">Its prices; null if the design or the channel did not exist.</param>
/// <param name="Currency">The channel's currency then.</param>
/// <param name="Basis">The revisions that they rest on.</param>
/// <param name="Written">The documents that were written then, such as <c>main@8</c>.</param>
public sealed record PricedMoment(long At, PricedDesign? Priced, string? Currency, IReadOnlyList<string> Basis, IReadOnlyList<string> Written)
{
    /// <summary>What changed in these documents, in words.</summary>
    public IReadOnlyList<string> Changed { get; init; } = [];
}
