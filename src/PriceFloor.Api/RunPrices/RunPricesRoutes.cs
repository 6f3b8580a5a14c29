using System.Globalization;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Pictures;
using Prices = PriceFloor.Pricing.Selling.RunPrices;

namespace PriceFloor.Api.RunPrices;

public static class RunPricesRoutes
{
    public static ValueTask<IResult> Get(PathKey path, FromQuery<RunPricesQuery> query, CatalogueReader reader, HttpContext context)
    {
        Answers.ForThisCallerOnly(context);
        var asked = query.Value;
        return reader.Read<IResult>(asked.AsOf, catalogue =>
        {
            if (catalogue.Design(path.Text) is not { } design)
                return Problem.Of(ProblemTypes.NotFound, $"There is no design \"{path.Text}\" (or there was none at that time).");
            var answer = AnswerOf(catalogue, design, asked);
            return answer.Found is not { } found ? Problem.Of(answer.Faults)
                : Offers.Of(context).Wanted(context.Request) == Format.Svg
                    ? TaggedBody.Of(RunPricesPicture.Of(found, DisplayText.Named(design.Document.Name, design.Key),
                        DisplayText.Named(catalogue.Channel(asked.Channel)!.Document.Name, asked.Channel))).Answer(context, Format.Svg)
                : JsonAnswer.Of(found);
        });
    }

    private static Outcome<RunPricesAnswer> AnswerOf(Catalogue catalogue, Stored<Design> design, RunPricesQuery asked)
    {
        if (catalogue.Channel(asked.Channel) is not { } channel)
            return RequestFault.Unknown(Place.Query.Error("channel", InputCodes.UnknownChannel,
                $"There is no channel \"{asked.Channel}\"{catalogue.HintOfChannel(asked.Channel)}; case counts."));
        if (catalogue.Profile(design.Document.Profile) is not { } profile)
            return RequestFault.Unknown(Place.Query.Error("sku", InputCodes.UnknownProfile,
                $"The design's profile \"{design.Document.Profile}\" did not exist at that time."));
        var outcome = catalogue.Floor(profile, design);
        if (outcome.Found is not { } floor)
            return FloorAnswers.FaultsOf(outcome.Faults, profile, design, Place.Query);
        var terms = SellingTerms.Of(channel.Document);
        if (terms.Found is null)
            return terms.Faults.ToList();
        var prices = Prices.Of(floor.Floor.UnitCost, terms.Value, asked.Quantities, asked.Sure);
        return prices.Found is { } found ? AnswerOf(catalogue, floor, channel, found, asked) : prices.Faults.ToList();
    }

    private static RunPricesAnswer AnswerOf(Catalogue catalogue, DesignFloor floor, Stored<Channel> channel, Prices prices,
        RunPricesQuery asked) => new()
        {
            Currency = floor.Year.Currency.Code,
            Runs = [.. prices.Items.Select(price => Row(price, floor.ListedOn(channel), floor.Year.Currency))],
            Basis = floor.Basis() with { Channel = channel.Basis, ListedPrice = null },
            Assumed = AssumptionAnswer.Of(Assumed.In(floor.Profile.Document).Concat(Assumed.In(floor.Floor.UnitCost))
                .Concat(Assumed.In(channel.Document, "/channel")).Where(one => !IsOfNoRun(one))),
            Warnings = WarningAnswer.Of(floor.WarningsOfTheFloor(catalogue.Today).Concat(Warnings.In(channel.Document, floor.Year, "/channel",
                catalogue.Channels.Select(other => other.Document)))),
            Workings = WorkingAnswer.Of(asked.Workings, () => Workings.Of(floor.Year)
                .Concat(prices.Items.Index().SelectMany(price => WorkingsOf(price.Item, price.Index + 1, floor.ListedOn(channel))))),
        };

    private static IEnumerable<Working> WorkingsOf(RunPrice price, int number, decimal? listed) => Workings.Prefixed(
        string.Create(CultureInfo.InvariantCulture, $"run{number}"),
        string.Create(CultureInfo.InvariantCulture, $"{price.Run.Quantity} pieces: "), Workings.Of(price, listed));

    /// <summary>What is made to order is sold to its buyer, and nothing of it comes back or is lost: these defaults lower no run.</summary>
    private static bool IsOfNoRun(Assumption one) => one.Pointer is "/profile/soldShare" or "/channel/usualDiscount" or "/channel/lossShare"
        or "/channel/returns";

    private static RunPriceAnswer Row(RunPrice price, decimal? listed, Currency money) => new()
    {
        Quantity = price.Run.Quantity,
        Floor = money.RoundUp(price.Floor),
        BenchHours = Answers.Hours(price.Run.BenchHours),
        FloorTotal = Rounding.WithDecimals(price.Order.FloorTotal, money.Decimals),
        PerPiece = money.RoundUp(price.Order.PerPiece),
        Earned = Rounding.Trim(price.Earned),
        Starts = Answers.Hours(price.Run.Starts),
        StartsToBeSure = price.Run.StartsToBeSure,
        QuantityJustBelow = price.QuantityJustBelow,
        ListedPrice = listed is { } asked ? Rounding.WithDecimals(asked, money.Decimals) : null,
        MostOff = listed is { } on && price.MostOff(on) is { } share ? Rounding.Trim(share) : null,
    };
}
