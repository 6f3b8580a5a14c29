using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.PriceParts;

public static class PricePartsRoutes
{
    public static ValueTask<IResult> Get(PathKey path, FromQuery<PricePartsQuery> query, CatalogueReader reader, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        return reader.Read<IResult>(asked.AsOf, catalogue =>
        {
            if (catalogue.Design(path.Text) is not { } design)
                return Problem.Of(ProblemTypes.NotFound, $"There is no design \"{path.Text}\" (or there was none at that time).");
            if (catalogue.Profile(design.Document.Profile) is not { } profile)
                return Problem.UnknownReference([new InputError
                {
                    Parameter = "sku",
                    Code = InputCodes.UnknownProfile,
                    Detail = $"The design's profile \"{design.Document.Profile}\" did not exist at that time.",
                }]);
            var outcome = catalogue.Floor(profile, design);
            if (outcome.Found is not { } floor)
                return Problem.Of(FloorAnswers.FaultsOf(outcome.Faults, profile, design, Place.Query));
            var parts = asked.Channel is { } key ? OnOne(catalogue, floor, design, key, asked) : OnAll(catalogue, floor, design);
            return parts.Found is not { } answer ? Problem.Of(parts.Faults)
                : Offers.Of(context).Wanted(context.Request) == Format.Svg
                    ? TaggedBody.Of(PricePartsPicture.Of(design.Key, answer)).Answer(context, Format.Svg)
                : JsonAnswer.Of(answer);
        });
    }

    private static Outcome<PricePartsAnswer> OnOne(Catalogue catalogue, DesignFloor floor, Stored<Design> design, string key, PricePartsQuery asked)
    {
        if (catalogue.Channel(key) is not { } channel)
            return RequestFault.Unknown(Place.Query.Error("channel", InputCodes.UnknownChannel,
                $"There is no channel \"{key}\"{catalogue.HintOfChannel(key)}; case counts."));
        if (asked.Price is null && floor.On(channel) is { Found: null } none)
            return none.Faults.ToList();
        var (price, from) = PriceOn(floor, channel, asked.Price);
        var outcome = CheckedPrice.Of(catalogue, new PriceCheckRequest { Sku = design.Key, Channel = key, Price = price }, Place.Query);
        if (outcome.Found is not { } check)
            return outcome.Faults.ToList();
        var parts = Pricing.Selling.PriceParts.Of(check.Check);
        return parts.Found is { } found
            ? new PricePartsAnswer
            {
                Currency = floor.Floor.UnitCost.Year.Currency.Code,
                Name = design.Document.Name,
                Floor = floor.Floor.UnitCost.Year.Currency.RoundUp(floor.Floor.UnitCost.Floor),
                Channels = [Row(channel, from, found)],
                Basis = check.Basis,
                Assumed = AssumptionAnswer.Of(check.Assumptions),
                Warnings = WarningAnswer.Of(check.AllWarnings),
                Workings = WorkingAnswer.Of(asked.Workings, () => check.AllWorkings.Concat(Workings.Of(found))),
            }
            : parts.Faults.ToList();
    }

    private static PricePartsAnswer OnAll(Catalogue catalogue, DesignFloor floor, Stored<Design> design)
    {
        var whole = floor.AnswerOnAll(catalogue, workings: false);
        return new PricePartsAnswer
        {
            Currency = whole.Currency,
            Name = design.Document.Name,
            Floor = whole.Floor,
            Channels = [.. catalogue.Channels.Where(channel => channel.Sound is not null).Select(channel => Row(floor, channel))],
            Basis = whole.Basis,
            Assumed = whole.Assumed,
            Warnings = whole.Warnings,
        };
    }

    private static ChannelPartsAnswer Row(DesignFloor floor, Stored<Channel> channel)
    {
        var prices = floor.On(channel);
        if (prices.Found is null)
            return WithoutPrice(channel, prices.Faults);
        var (price, from) = PriceOn(floor, channel, null);
        var check = prices.Value.Check(price);
        var parts = check.Found is { } found ? Pricing.Selling.PriceParts.Of(found) : null;
        return parts?.Found is { } known ? Row(channel, from, known) : WithoutPrice(channel, parts?.Faults ?? check.Faults);
    }

    private static (decimal Price, PriceIs From) PriceOn(DesignFloor floor, Stored<Channel> channel, decimal? asked) =>
        asked is { } price ? (price, PriceIs.Asked)
        : floor.ListedOn(channel) is { } listed ? (listed, PriceIs.Listed)
        : (floor.On(channel).Value.FloorPrice, PriceIs.FloorPrice);

    private static ChannelPartsAnswer Row(Stored<Channel> channel, PriceIs from, Pricing.Selling.PriceParts parts)
    {
        var money = Currency.Of(channel.Document.Currency);
        var rounded = parts.Rounded;
        return new ChannelPartsAnswer
        {
            Channel = channel.Key,
            Name = channel.Document.Name,
            Currency = money.Code,
            Price = Rounding.WithDecimals(parts.Check.Sale.Price, money.Decimals),
            PriceIs = from,
            Verdict = parts.Check.Verdict,
            Paid = rounded.Sum(part => part.Amount),
            Work = [.. parts.RoundedWork.Select(one => new WorkAnswer { Work = one.Work, Hours = Answers.Hours(one.Hours), Amount = one.Amount })],
            Parts = [.. rounded.Select(part =>
                new PartAnswer { Part = part.Part, Amount = part.Amount, Share = Answers.Ratio(parts[part.Part] / parts.Paid) })],
        };
    }

    private static ChannelPartsAnswer WithoutPrice(Stored<Channel> channel, IReadOnlyList<Fault> faults) =>
        new()
        {
            Channel = channel.Key,
            Name = channel.Document.Name,
            Currency = channel.Document.Currency,
            Parts = [],
            Work = [],
            Reason = faults[0].Code,
        };
}

/// <summary>The price in question; without a channel, each channel's own.</summary>
public sealed record PricePartsQuery(string? Channel, decimal? Price, DateTimeOffset? AsOf, bool Workings) : IQuery<PricePartsQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "Key of a stored channel; if absent, every channel at its listed price, else at its floor price.", "string", Example: "web"),
        new("price", "A price on that channel; if absent, the listed one, else the floor price.", "number", "decimal", "58.00", Minimum: 0,
            Maximum: Limits.HighestPrice),
        QueryParameters.AsOf, QueryParameters.Workings,
    ];

    public static PricePartsQuery Read(QueryValues values)
    {
        var asked = new PricePartsQuery(values.Text("channel"), values.Number("price", new PriceAttribute { Above = true }), values.Time("asOf"),
            values.Boolean("workings"));
        if (asked.Channel is null && asked.Price is not null)
            values.Add("channel", FaultCodes.Required, "A price needs a channel; name it.");
        else if (asked.Channel is null && asked.Workings)
            values.Add("channel", FaultCodes.Required, "Workings need a channel; name it.");
        return asked;
    }
}
