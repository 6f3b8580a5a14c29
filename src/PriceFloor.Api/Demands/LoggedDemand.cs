using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Prices;

namespace PriceFloor.Api.Demands;

/// <summary>The demand for one design from the stored lines of all designs of its profile.</summary>
internal static class LoggedDemand
{
    public static async ValueTask<Outcome<DemandAnswer>> OfAsync(LoggedQuestion question, LoggedShelves shelves, Stored<Design> design,
        DemandQuery asked)
    {
        var (catalogue, log, choices) = (question.Catalogue, question.Log, question.Log.Choices);
        var profile = catalogue.Profile(design.Document.Profile)!;
        var floor = catalogue.Floor(profile, design);
        if (floor.Found is not { } found)
            return FloorAnswers.FaultsOf(floor.Faults, profile, design, Place.Query);
        var good = await shelves.Good(question, profile);
        var evidence = (await question.EvidenceOf(found, good)).Studio.Designs.SingleOrDefault();
        if (evidence is null || evidence.Log.Movements.Count == 0)
            return Nothing(design, asked.Channel);
        if (evidence.AsFound.Found is not { } piece)
            return FloorAnswers.FaultsOf(evidence.AsFound.Faults, profile, design, Place.Query);

        var demand = (await shelves.OfAsync(question, profile, good)).Demand;
        if (asked.Channel is { } key && catalogue.Channel(key)?.Sound?.Currency != found.Year.Currency.Code)
            return RequestFault.CannotCompute(FaultCodes.CurrencyMismatch,
                $"\"{key}\" sells in another currency than the profile has ({found.Year.Currency.Code}), and nothing is ever converted.");
        var own = asked.Channel is { } channel ? demand.On(design.Key, channel) : demand.Of(design.Key) is [var most, ..] ? most : null;
        if (own is null)
            return Nothing(design, asked.Channel);
        var prices = OfPrices(piece, found.Floor.HighestWholesale, own.Offer.Channel);
        if (prices.Found is null)
            return prices.Faults.ToList();
        var basis = new EvidenceBasisAnswer
        {
            Profile = profile.Basis,
            Design = design.Basis,
            Channel = catalogue.Channel(own.Offer.Key)!.Basis,
            Log = log.Basis,
        };
        return DemandAnswer.Of(new PriceQuestion(own, piece, prices.Value, demand.Sensitivity), demand, asked, evidence.Shelf, basis,
            EvidenceWarnings.OfAge(question.SeesAll ? await log.NewestDay() : null, choices.To));
    }

    /// <summary>The floor price of a piece on a channel, or why there is none.</summary>
    internal static Outcome<ChannelPrices> OfPrices(UnitCost piece, decimal? wholesale, Channel channel)
    {
        var (floor, terms) = (FloorPrice.Of(piece, wholesale), SellingTerms.Of(channel));
        return floor.Found is null ? floor.Faults.ToList() : terms.Found is null ? terms.Faults.ToList()
            : ChannelPrices.Of(floor.Value, terms.Value);
    }

    private static RequestFault Nothing(Stored<Design> design, string? channel) => RequestFault.CannotCompute(EvidenceReasonCodes.NothingLogged,
        $"The log has nothing of \"{design.Key}\"{(channel is null ? "" : $" on \"{channel}\"")} within these days.");
}
