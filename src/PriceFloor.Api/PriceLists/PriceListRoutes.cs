using System.Text.Json;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Pictures;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.PriceLists;

public static class PriceListRoutes
{
    public static async Task<IResult> Get(FromQuery<PriceListQuery> query, CatalogueReader reader, HttpContext context)
    {
        var (asked, format) = (query.Value, Offers.Of(context).Wanted(context.Request)!);
        var catalogue = reader.Whole(asked.AsOf);
        if (format == Format.Svg && asked.Channel is null)
            return Problem.Invalid(
                [new InputError { Parameter = "channel", Code = FaultCodes.Required, Detail = "A picture shows one channel; name it." }]);
        if (Unknown(catalogue, asked) is { Count: > 0 } unknown)
            return Problem.UnknownReference(unknown);
        var page = await Kept(catalogue, asked, format, context.RequestAborted);
        if (page.Next is { } next)
            DocumentPage.LinkToNext(context.Request, next);
        return page.Body.Answer(context, format);
    }

    private static ValueTask<PriceListPage> Kept(WholeCatalogue catalogue, PriceListQuery asked, Format format, CancellationToken cancel) =>
        catalogue.Kept((asked, format), async () =>
        {
            var list = Of(catalogue, asked);
            return new PriceListPage(list.Next, TaggedBody.Of(
                format == Format.Csv ? await PriceListSheet.Of(list, asked.Dialect, cancel)
                : format == Format.Svg && catalogue.Channel(asked.Channel!) is { } channel
                    ? PriceLadderPicture.Of(list, DisplayText.Named(channel.Document.Name, channel.Key), channel.Document.Currency)
                : format == Format.Html
                    ? PricePage.Of(list, catalogue.Channels.ToDictionary(one => one.Key, one => one.Document.Name), catalogue.Today)
                : JsonSerializer.SerializeToUtf8Bytes(list, WireJson.Options)));
        });

    private static List<InputError> Unknown(Catalogue catalogue, PriceListQuery asked)
    {
        var unknown = new List<InputError>();
        if (asked.Channel is { } channel && catalogue.Channel(channel) is null)
            unknown.Add(new InputError
            {
                Parameter = "channel",
                Code = InputCodes.UnknownChannel,
                Detail = $"There is no channel \"{channel}\"; case counts.",
            });
        if (asked.Profile is { } profile && catalogue.Profile(profile) is null)
            unknown.Add(new InputError
            {
                Parameter = "profile",
                Code = InputCodes.UnknownProfile,
                Detail = $"There is no profile \"{profile}\"; case counts.",
            });
        return unknown;
    }

    private static PriceListAnswer Of(Catalogue catalogue, PriceListQuery asked)
    {
        var wanted = asked.Channel is { } key ? [catalogue.Channel(key)!] : catalogue.Channels;
        var channels = wanted.Where(channel => channel.Sound is not null).ToList();
        var items = new List<PriceListItemAnswer>();
        var warnings = DamagedDocumentException.WarningsOf(wanted, "/basis/channels").ToList();
        var designs = catalogue.Designs.Where(design => asked.Profile is null || design.Sound?.Profile == asked.Profile).ToList();
        var from = ListedPriceKey.Find(asked.After ?? "") ?? new ListedPriceKey(asked.After ?? "", "");
        var most = asked.Limit ?? PriceListQuery.Most;
        string? next = null;
        foreach (var (design, channel, priced) in Priced(catalogue, [.. designs.Where(design => string.CompareOrdinal(design.Key, from.Sku) >= 0)],
            channels, isPage: asked.Limit is not null))
        {
            if ((design.Key == from.Sku && string.CompareOrdinal(channel.Key, from.Channel) <= 0)
                    || (asked.Verdict is { } verdict && priced.Verdict != verdict))
                continue;
            if (items.Count == most)
            {
                next = new ListedPriceKey(items[^1].Sku, items[^1].Channel).ToString();
                break;
            }

            if (priced.NotAllowed)
                warnings.Add(Warnings.NotAllowed($"/items/{items.Count}/listedPrice"));
            items.Add(PriceListItemAnswer.Of(design, channel, priced));
        }

        var profiles = designs.Select(design => design.Sound?.Profile).OfType<string>().Distinct().Order(StringComparer.Ordinal)
            .Select(catalogue.Profile);
        return new PriceListAnswer
        {
            Items = items,
            Next = next,
            Basis = new PriceListBasisAnswer([.. profiles.Where(profile => profile is not null).Select(profile => profile!.Basis)],
                [.. channels.Select(channel => channel.Basis)]),
            Warnings = WarningAnswer.Of(warnings),
        };
    }

    /// <summary>
    /// Each design on each channel, in order. A complete list is computed on all processors, since every price is new right after a profile has
    /// changed; a page is computed only as far as it goes.
    /// </summary>
    private static IEnumerable<(Stored<Design> Design, Stored<Channel> Channel, PricedDesign Priced)> Priced(Catalogue catalogue,
        IReadOnlyList<Stored<Design>> designs, IReadOnlyList<Stored<Channel>> channels, bool isPage)
    {
        IEnumerable<(Stored<Design> Design, List<PricedDesign> Prices)> rows = isPage
            ? designs.Select(design => (design, PricesOf(design)))
            : designs.AsParallel().AsOrdered().Select(design => (design, PricesOf(design)));
        return rows.SelectMany(row => channels.Zip(row.Prices, (channel, priced) => (row.Design, channel, priced)));

        List<PricedDesign> PricesOf(Stored<Design> design) => [.. channels.Select(channel => PricedDesign.Of(catalogue, design, channel))];
    }

    private sealed record PriceListPage(string? Next, TaggedBody Body);
}

/// <summary>The part of the price list.</summary>
public sealed record PriceListQuery(string? Channel, string? Profile, Verdict? Verdict, int? Limit, string? After, SheetDialect Dialect,
    DateTimeOffset? AsOf) : IQuery<PriceListQuery>
{
    /// <summary>If no limit is given, a list has at most this many items.</summary>
    public const int Most = 100_000;

    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a stored channel; every channel if absent.", "string", Example: "web"),
        new("profile", "Only designs of this cost profile.", "string", Example: "main"),
        new("verdict", "Only listed prices with this verdict: below-floor, below-target or meets-target.", "string", Example: "below-floor"),
        QueryParameters.LimitOfWhole, QueryParameters.After with { Example = "RB-014/web" }, SheetQuery.Dialect, QueryParameters.AsOf,
    ];

    public static PriceListQuery Read(QueryValues values) => new(values.Text("channel"), values.Text("profile"), values.EnumValue<Verdict>("verdict"),
        values.IntegerOrNull("limit", 1, 1000), values.Text("after", 200), SheetQuery.DialectOf(values), values.Time("asOf"));
}
