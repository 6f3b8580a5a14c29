using System.Text.Json;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.PriceLists;

namespace PriceFloor.Api.Remedies;

/// <summary>Answers what would fix each listed price that falls short.</summary>
public static class RemedyListRoutes
{
    public static async Task<IResult> Get(FromQuery<RemedyListQuery> query, CatalogueReader reader, HttpContext context)
    {
        var (asked, format) = (query.Value, Offers.Of(context).Wanted(context.Request)!);
        var catalogue = await reader.Whole(asked.AsOf);
        if (UnknownNames.Of(catalogue, asked.Channel, asked.Profile, mayRead: true) is { Count: > 0 } unknown)
            return Problem.UnknownReference(unknown);
        var list = Of(catalogue, asked);
        if (list.Next is { } next)
            DocumentPage.LinkToNext(context.Request, next);
        var body = format == Format.Csv
            ? await RemedySheet.Of(list, asked.Dialect, context.RequestAborted)
            : JsonSerializer.SerializeToUtf8Bytes(list, WireJson.Options);
        return TaggedBody.Of(body).Answer(context, format);
    }

    private static RemedyListAnswer Of(Catalogue catalogue, RemedyListQuery asked)
    {
        var found = Short(catalogue, asked);
        var isSorted = asked.Sort == PriceListSort.ShortBy;
        var page = (isSorted ? found.OrderByDescending(one => one.Check.ShortBy) : found).Take(asked.Limit + 1).ToList();
        var items = page.Take(asked.Limit).ToList();
        var answers = items.ConvertAll(one => AnswerOf(one, catalogue, asked.Toward));
        var faster = items.Zip(answers).Where(one => one.Second.Remedies.Any(remedy => remedy.Remedy == RemedyKind.WorkFaster))
            .Select(one => one.First.Floor.Profile).DistinctBy(profile => profile.Key);
        return new RemedyListAnswer
        {
            Toward = asked.Toward,
            Items = answers,
            Next = page.Count > asked.Limit && !isSorted ? items[^1].Key.ToString() : null,
            Warnings = WarningAnswer.Of(DamagedDocumentException.WarningsOf(catalogue.Channels, "/items")
                .Concat(faster.SelectMany(profile => IdleHours.Warnings(catalogue, profile, offersFaster: true, "/items")))),
        };
    }

    /// <summary>The listed prices that fall short, in order of design and channel, from where the page begins.</summary>
    private static IEnumerable<ShortPrice> Short(Catalogue catalogue, RemedyListQuery asked)
    {
        var from = ListedPriceKey.Read(asked.After ?? "") ?? new ListedPriceKey(asked.After ?? "", "");
        var channels = (asked.Channel is { } key ? [catalogue.Channel(key)!] : catalogue.Channels)
            .Where(channel => channel.Sound is not null).ToList();
        foreach (var design in catalogue.Designs.Where(design => design.Sound is not null && string.CompareOrdinal(design.Key, from.Sku) >= 0
            && (asked.Profile is null || design.Sound.Profile == asked.Profile)))
            foreach (var channel in channels)
                foreach (var alias in catalogue.NamesListed(design, channel.Key).Prepend(null))
                    if ((design.Key != from.Sku || string.CompareOrdinal(ListedPriceKey.PlaceOf(channel.Key, alias), from.Place) > 0)
                            && ShortPrice.Of(catalogue, design, channel, alias, asked.Toward) is { } found)
                        yield return found;
    }

    private static ShortPriceAnswer AnswerOf(ShortPrice one, Catalogue catalogue, RemedyGoal toward)
    {
        var money = one.Floor.Year.Currency;
        var remedies = Pricing.Planning.Remedies.Of(one.Check, toward, OtherChannels.Of(one.Floor, one.Channel, catalogue));
        return new ShortPriceAnswer
        {
            Sku = one.Floor.Design.Key,
            Alias = one.Alias,
            Name = one.Floor.Design.Document.Name,
            Channel = one.Channel.Key,
            Currency = money.Code,
            ListedPrice = Rounding.WithDecimals(one.Check.Sale.Price, money.Decimals),
            Verdict = one.Check.Verdict,
            ShortBy = money.RoundUp(one.Check.ShortBy),
            Remedies = [.. (remedies.Found?.All ?? []).Where(remedy => remedy.Possible).Select(RemedyAnswer.Of)],
            Basis = one.Floor.Basis() with { Channel = one.Channel.Basis },
        };
    }

    /// <summary>A listed price that is not what it should be.</summary>
    private sealed record ShortPrice(DesignFloor Floor, Stored<Channel> Channel, string? Alias, PriceCheck Check)
    {
        public ListedPriceKey Key => new(Floor.Design.Key, Channel.Key, Alias);

        public static ShortPrice? Of(Catalogue catalogue, Stored<Design> design, Stored<Channel> channel, string? alias,
            RemedyGoal toward)
        {
            if (catalogue.ListedPrices(design.Key).GetValueOrDefault(ListedPriceKey.PlaceOf(channel.Key, alias))?.Sound?.Price is not { } listed
                    || catalogue.Profile(design.Document.Profile) is not { Sound: not null } profile
                    || catalogue.Floor(profile, design).Found is not { } floor || floor.On(channel).Found is not { } prices)
                return null;
            var isEnough = prices.VerdictOf(listed) is var verdict
                && (toward == RemedyGoal.Target ? verdict == Verdict.MeetsTarget : verdict != Verdict.BelowFloor);
            return isEnough || prices.Check(listed).Found is not { } check ? null : new ShortPrice(floor, channel, alias, check);
        }
    }
}
