using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Years;

/// <summary>The designs of a profile that bring most for each bench hour.</summary>
internal static class CarryingDesigns
{
    private const int Most = 10;

    public static IReadOnlyList<CarryingDesignAnswer> Of(Catalogue catalogue, Stored<CostProfile> profile)
    {
        var channels = catalogue.Channels.Where(channel => channel.Sound is not null).ToList();
        var best = catalogue.Designs.Where(design => design.Sound?.Profile == profile.Key)
            .SelectMany(design => OnAll(catalogue, profile, design, channels).OrderByDescending(one => one.Earned).Take(1));
        return [.. best.OrderByDescending(one => one.Earned).ThenBy(one => one.Design.Key, StringComparer.Ordinal).Take(Most).Select(AnswerOf)];
    }

    private static IEnumerable<Carrying> OnAll(Catalogue catalogue, Stored<CostProfile> profile, Stored<Design> design,
        IReadOnlyList<Stored<Channel>> channels)
    {
        var listed = catalogue.ListedPrices(design.Key);
        if (catalogue.Floor(profile, design).Found is not { } floor)
            yield break;
        foreach (var channel in channels)
            if (listed.GetValueOrDefault(channel.Key)?.Sound?.Price is { } price && floor.On(channel).Found?.Check(price).Found is { } check)
                yield return new Carrying(design, channel, check);
    }

    private static CarryingDesignAnswer AnswerOf(Carrying one)
    {
        var money = Currency.Of(one.Channel.Document.Currency);
        return new CarryingDesignAnswer
        {
            Sku = one.Design.Key,
            Name = one.Design.Document.Name,
            Channel = one.Channel.Key,
            ListedPrice = Rounding.WithDecimals(one.Check.Sale.Price, money.Decimals),
            Verdict = one.Check.Verdict,
            EarnedPerBenchHour = money.Round(one.Earned),
        };
    }

    private sealed record Carrying(Stored<Design> Design, Stored<Channel> Channel, PriceCheck Check)
    {
        public decimal Earned => Check.EarnedPerBenchHour;
    }
}
