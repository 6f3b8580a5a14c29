using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Differences;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.FloorHistories;

/// <summary>What changed in the documents that were written at one moment, in words. What the caller may not see was not there.</summary>
internal static class WrittenDifferences
{
    public static IReadOnlyList<string> Of(Catalogue before, Catalogue after, IEnumerable<Revision> written) =>
        [.. written.SelectMany(revision => Of(before, after, revision))];

    private static IEnumerable<string> Of(Catalogue before, Catalogue after, Revision written) => written.Kind switch
    {
        Kinds.Profile => Between("profile", before.Profile(written.Key), after.Profile(written.Key), profile => profile.Currency),
        Kinds.Design => Between("design", before.Design(written.Key), after.Design(written.Key),
            design => after.Profile(design.Profile)?.Sound?.Currency),
        Kinds.Channel => Between($"channel {written.Key}", before.Channel(written.Key), after.Channel(written.Key), channel => channel.Currency),
        _ => Listed(before, after, ListedPriceKey.Of(written.Key)),
    };

    private static IEnumerable<string> Listed(Catalogue before, Catalogue after, ListedPriceKey key)
    {
        var (subject, money) = ($"listed price on {key.Channel}", after.Channel(key.Channel)?.Sound?.Currency);
        var (was, now) = (before.ListedPrices(key.Sku).GetValueOrDefault(key.Channel), after.ListedPrices(key.Sku).GetValueOrDefault(key.Channel));
        return (was?.Sound, now?.Sound) switch
        {
            (null, { } made) when was is null => [DocumentDifferences.New(subject, made, money)],
            ({ } gone, null) when now is null => [DocumentDifferences.Gone(subject, gone, money)],
            _ => Between(subject, was, now, _ => money),
        };
    }

    /// <summary>A whole document that is new or gone is named and not repeated.</summary>
    private static IEnumerable<string> Between<T>(string subject, Stored<T>? before, Stored<T>? after, Func<T, string?> currency) where T : class =>
        (before, after) switch
        {
            (null, null) => [],
            (null, _) => [$"{subject}: new"],
            (_, null) => [$"{subject}: gone"],
            _ => before.Sound is { } was && after.Sound is { } now
                ? DocumentDifferences.Between(subject, was, now, currency(now))
                : [$"{subject}: cannot be read"],
        };
}
