using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.PriceLists;
using PriceFloor.Storage;

namespace PriceFloor.Api.FloorChanges;

/// <summary>
/// The floors and targets that differ between two moments. Only designs that a change can affect are compared: those that changed themselves or in
/// their listed prices, those of a changed profile, and all of them if a channel changed.
/// </summary>
public static class MovedFloors
{
    /// <summary>The kinds of documents that floors and targets rest on.</summary>
    public static readonly IReadOnlyList<string> RestOn = [Kinds.Profile, Kinds.Design, Kinds.Channel, Kinds.ListedPrice];

    public static IEnumerable<FloorChangeItemAnswer> Between(Catalogue then, Catalogue now, IReadOnlyList<Change> changes,
        string? after, bool mayRead)
    {
        var fields = changes.ToDictionary(change => change.Document,
            change => new Lazy<IReadOnlyList<string>>(() => [.. FieldsThatDiffer.Between(change)]));
        var channels = then.Channels.Concat(now.Channels).Select(channel => channel.Key).Distinct().Order(StringComparer.Ordinal).ToList();
        var from = ListedPriceKey.Find(after ?? "") ?? new ListedPriceKey(after ?? "", "");
        return Touched(then, now, changes).Where(sku => string.CompareOrdinal(sku, from.Sku) >= 0)
            .SelectMany(sku => channels.Where(channel => sku != from.Sku || string.CompareOrdinal(channel, from.Channel) > 0)
                .Select(channel => Moved(then, now, sku, channel, mayRead ? fields : null)))
            .OfType<FloorChangeItemAnswer>();
    }

    private static IEnumerable<string> Touched(Catalogue then, Catalogue now, IReadOnlyList<Change> changes)
    {
        var keys = changes.ToLookup(change => change.Document.Kind, change => change.Document.Key);
        var profiles = keys[Kinds.Profile].ToHashSet();
        var itself = keys[Kinds.Design].Concat(keys[Kinds.ListedPrice].Select(key => ListedPriceKey.Of(key).Sku));
        var all = keys[Kinds.Channel].Any();
        var others = then.Designs.Concat(now.Designs)
            .Where(design => all || (profiles.Count > 0 && design.Sound is { } document && profiles.Contains(document.Profile)))
            .Select(design => design.Key);
        return itself.Concat(others).Distinct().Order(StringComparer.Ordinal);
    }

    private static FloorChangeItemAnswer? Moved(Catalogue then, Catalogue now, string sku, string channel,
        Dictionary<DocumentName, Lazy<IReadOnlyList<string>>>? fields)
    {
        var (before, after) = (PricedAt(then, sku, channel), PricedAt(now, sku, channel));
        if (before?.FloorPrice == after?.FloorPrice && before?.TargetPrice == after?.TargetPrice)
            return null;
        if ((now.Channel(channel)?.Sound ?? then.Channel(channel)?.Sound) is not { Currency: var code })
            return null;
        var money = Currency.Of(code);
        decimal? Price(decimal? price) => price is { } exact ? Rounding.WithDecimals(exact, money.Decimals) : null;
        return new FloorChangeItemAnswer
        {
            Sku = sku,
            Channel = channel,
            Currency = money.Code,
            OldFloorPrice = Price(before?.FloorPrice),
            NewFloorPrice = Price(after?.FloorPrice),
            OldTargetPrice = Price(before?.TargetPrice),
            NewTargetPrice = Price(after?.TargetPrice),
            ListedPrice = Price(after?.ListedPrice),
            Verdict = after?.Verdict,
            CarriesItsShare = after?.Verdict is { } verdict ? verdict != Verdict.BelowFloor : null,
            Reason = after?.Reason,
            MovedBy = fields is null ? null
                : [.. DocumentsBehind(then, now, sku, channel).Distinct().Where(fields.ContainsKey).SelectMany(document => fields[document].Value)],
        };
    }

    private static PricedDesign? PricedAt(Catalogue catalogue, string sku, string channel) =>
        catalogue.Design(sku) is { } design && catalogue.Channel(channel) is { } on ? PricedDesign.Of(catalogue, design, on) : null;

    /// <summary>Everything that a floor and a target on a channel rest on, then or now: prices listed on wholesale channels set the target.</summary>
    private static IEnumerable<DocumentName> DocumentsBehind(Catalogue then, Catalogue now, string sku, string channel)
    {
        foreach (var catalogue in new[] { then, now })
        {
            if (catalogue.Design(sku)?.Sound is { } design)
                yield return new DocumentName(Kinds.Profile, design.Profile);
            yield return new DocumentName(Kinds.Design, sku);
            yield return new DocumentName(Kinds.Channel, channel);
            foreach (var listed in catalogue.ListedPrices(sku).Keys.Order(StringComparer.Ordinal))
                if (catalogue.Channel(listed)?.Sound?.Sells == Sells.Wholesale)
                {
                    yield return new DocumentName(Kinds.ListedPrice, new ListedPriceKey(sku, listed).ToString());
                    yield return new DocumentName(Kinds.Channel, listed);
                }
        }
    }
}
