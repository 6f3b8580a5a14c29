using System.Text.Json;
using PriceFloor.Api.Access;
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
        var (asked, format, mayRead) = (query.Value, Offers.Of(context).Wanted(context.Request)!, Caller.Of(context).May(Scope.Read));
        if (asked.Sort == PriceListSort.ShortBy && !mayRead)
            return Problem.Of(ProblemTypes.KeyNotAllowed,
                "What prices are short by reveals costs; sorting by it needs a key with the scope \"read\".");
        var catalogue = await reader.Whole(asked.AsOf);
        if (format == Format.Svg && asked.Channel is null)
            return Problem.Invalid(
                [new InputError { Parameter = "channel", Code = FaultCodes.Required, Detail = "A picture shows one channel; name it." }]);
        if (UnknownNames.Of(catalogue, asked.Channel, asked.Profile, mayRead) is { Count: > 0 } unknown)
            return Problem.UnknownReference(unknown);
        var page = await Kept(catalogue, asked, format, mayRead, context.RequestAborted);
        if (page.Next is { } next)
            DocumentPage.LinkToNext(context.Request, next);
        return page.Body.Answer(context, format);
    }

    private static ValueTask<PriceListPage> Kept(WholeCatalogue catalogue, PriceListQuery asked, Format format, bool mayRead,
        CancellationToken cancel) =>
        catalogue.Kept((asked, format, mayRead), async () =>
        {
            var list = Of(catalogue, asked, mayRead);
            return new PriceListPage(list.Next, TaggedBody.Of(
                format == Format.Csv ? await PriceListSheet.Of(list, asked.Dialect, mayRead, cancel)
                : format == Format.Svg && catalogue.Channel(asked.Channel!) is { } channel
                    ? PriceLadderPicture.Of(list, DisplayText.Named(channel.Document.Name, channel.Key), channel.Document.Currency)
                : format == Format.Html
                    ? PricePage.Of(list, catalogue.Channels.ToDictionary(one => one.Key, one => one.Document.Name), catalogue.Today)
                : JsonSerializer.SerializeToUtf8Bytes(list, WireJson.Options)));
        });

    private static PriceListAnswer Of(Catalogue catalogue, PriceListQuery asked, bool mayRead)
    {
        var wanted = asked.Channel is { } key ? [catalogue.Channel(key)!] : catalogue.Channels;
        var channels = wanted.Where(channel => channel.Sound is not null).ToList();
        var items = new List<PriceListItemAnswer>();
        var warnings = DamagedDocumentException.WarningsOf(wanted, "/basis/channels").ToList();
        var designs = catalogue.Designs.Where(design => asked.Profile is null || design.Sound?.Profile == asked.Profile).ToList();
        var from = ListedPriceKey.Read(asked.After ?? "") ?? new ListedPriceKey(asked.After ?? "", "");
        var most = asked.Limit ?? PriceListQuery.Most;
        string? next = null;
        var isSorted = asked.Sort == PriceListSort.ShortBy;
        var rows = Priced(catalogue, [.. designs.Where(design => string.CompareOrdinal(design.Key, from.Sku) >= 0)], channels, mayRead,
            isPage: asked.Limit is not null && !isSorted);
        foreach (var (design, channel, alias, priced) in isSorted ? rows.OrderByDescending(row => row.Priced.ShortBy ?? -1) : rows)
        {
            if ((design.Key == from.Sku && string.CompareOrdinal(ListedPriceKey.PlaceOf(channel.Key, alias), from.Place) <= 0)
                    || (asked.Verdict is { } verdict && priced.Verdict != verdict))
                continue;
            if (items.Count == most)
            {
                next = isSorted ? null : new ListedPriceKey(items[^1].Sku, items[^1].Channel, items[^1].Alias).ToString();
                break;
            }

            if (priced.NotAllowed)
                warnings.Add(Warnings.NotAllowed($"/items/{items.Count}/listedPrice"));
            items.Add(PriceListItemAnswer.Of(design, channel, alias, priced));
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
    /// Each design on each channel, in order, and after it its other names that have a price of their own there. A complete list is computed on all
    /// processors, since every price is new right after a profile has changed; a page is computed only as far as it goes.
    /// </summary>
    private static IEnumerable<PriceListRow> Priced(Catalogue catalogue,
        IReadOnlyList<Stored<Design>> designs, IReadOnlyList<Stored<Channel>> channels, bool mayRead, bool isPage)
    {
        IEnumerable<List<PriceListRow>> rows = isPage ? designs.Select(RowsOf) : designs.AsParallel().AsOrdered().Select(RowsOf);
        return rows.SelectMany(row => row);

        List<PriceListRow> RowsOf(Stored<Design> design) =>
            [.. channels.SelectMany(channel => catalogue.NamesListed(design, channel.Key).Prepend(null),
                (channel, alias) => new PriceListRow(design, channel, alias, PricedDesign.Of(catalogue, design, channel, mayRead, alias)))];
    }

    /// <summary>A line before its part of the list is known; an alias has a price of its own.</summary>
    private sealed record PriceListRow(Stored<Design> Design, Stored<Channel> Channel, string? Alias, PricedDesign Priced);

    private sealed record PriceListPage(string? Next, TaggedBody Body);
}

/// <summary>The order of a price list.</summary>
public enum PriceListSort
{
    /// <summary>By design, then by channel.</summary>
    Key,

    /// <summary>What is short of most first; then what carries its share, then what is not listed.</summary>
    ShortBy,
}

/// <summary>The part of the price list.</summary>
public sealed record PriceListQuery(string? Channel, string? Profile, Verdict? Verdict, int? Limit, string? After, SheetDialect Dialect,
    DateTimeOffset? AsOf, PriceListSort Sort) : IQuery<PriceListQuery>
{
    /// <summary>If no limit is given, a list has at most this many items.</summary>
    public const int Most = 100_000;

    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a stored channel; every channel if absent.", "string", Example: "web"),
        new("profile", "Only designs of this cost profile.", "string", Example: "main"),
        new("verdict", "Only listed prices with this verdict: below-floor, below-target or meets-target.", "string", Example: "below-floor"),
        new("sort", "The order: key (default), or short-by, the listed price that is short of most first; that needs the scope read, and with "
            + "limit gives the first so many.", "string", Example: "short-by"),
        QueryParameters.LimitOfWhole, QueryParameters.After with { Example = "RB-014/web" }, SheetQuery.Dialect, QueryParameters.AsOf,
    ];

    public static PriceListQuery Read(QueryValues values)
    {
        var asked = new PriceListQuery(values.Text("channel"), values.Text("profile"), values.EnumValue<Verdict>("verdict"),
            values.IntegerOrNull("limit", 1, 1000), values.Text("after", 300), SheetQuery.DialectOf(values), values.Time("asOf"),
            values.EnumValue<PriceListSort>("sort") ?? PriceListSort.Key);
        if (asked is { After: not null, Sort: not PriceListSort.Key })
            values.Add("after", FaultCodes.Unexpected,
                "A list that is sorted by another order than its keys has no pages; leave after out, or sort by key.");
        return asked;
    }
}
