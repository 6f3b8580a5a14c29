using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Prices;
using PriceFloor.Storage;

namespace PriceFloor.Api.Demands;

/// <summary>The demand for one design from the stored lines of all designs of its profile.</summary>
internal static class LoggedDemand
{
    public static async ValueTask<Outcome<DemandAnswer>> OfAsync(Snapshot snapshot, Catalogue catalogue, Stored<Design> design, DemandQuery asked,
        ProfileAccess access)
    {
        var profile = catalogue.Profile(design.Document.Profile)!;
        var floor = catalogue.Floor(profile, design);
        if (floor.Found is not { } found)
            return FloorAnswers.FaultsOf(floor.Faults, profile, design, Place.Query);
        var choices = asked.Asked.Choices(catalogue.Today);
        var log = await StoredLog.OfAsync(snapshot, asked.AsOf, choices);
        var movements = await log.MovementsOf(design.Key);
        var history = await StoredHistory.OfAsync(snapshot, [design.Key], [], asked.AsOf);
        var evidence = StudioEvidence.Of(movements, await log.BenchOf(design.Key), log.Sources, null,
            new KnownStudio([new KnownDesign(design.Key, found.Floor.UnitCost, history.MadeSoSince(design.Key))],
                key => catalogue.Channel(key)?.Sound, history.Listed), choices).Designs.SingleOrDefault();
        if (evidence is null || movements.Count == 0)
            return Nothing(design, asked.Channel);
        if (evidence.AsFound.Found is not { } piece)
            return FloorAnswers.FaultsOf(evidence.AsFound.Faults, profile, design, Place.Query);

        var offers = await LoggedOffers.OfAsync(snapshot, log, catalogue, found.Year.Currency, choices, asked.AsOf, access);
        var demand = StudioDemand.Of(await offers.OfProfile(profile.Key), choices.To, choices.Level);
        if (asked.Channel is { } key && !offers.Channels.ContainsKey(key))
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
            EvidenceWarnings.OfAge(access.IsWhole ? await log.NewestDay() : null, choices.To));
    }

    private static Outcome<ChannelPrices> OfPrices(UnitCost piece, decimal? wholesale, Channel channel)
    {
        var (floor, terms) = (FloorPrice.Of(piece, wholesale), SellingTerms.Of(channel));
        return floor.Found is null ? floor.Faults.ToList() : terms.Found is null ? terms.Faults.ToList()
            : ChannelPrices.Of(floor.Value, terms.Value);
    }

    private static RequestFault Nothing(Stored<Design> design, string? channel) => RequestFault.CannotCompute(EvidenceReasonCodes.NothingLogged,
        $"The log has nothing of \"{design.Key}\"{(channel is null ? "" : $" on \"{channel}\"")} within these days.");
}
