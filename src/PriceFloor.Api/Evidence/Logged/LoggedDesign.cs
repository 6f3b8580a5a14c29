using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;
using PriceFloor.Evidence;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The evidence of one design from its stored lines.</summary>
internal static class LoggedDesign
{
    public static async ValueTask<Outcome<StoredDesignEvidenceAnswer>> OfAsync(Snapshot snapshot, Catalogue catalogue, Stored<Design> design,
        DesignEvidenceQuery asked, ProfileAccess access)
    {
        var profile = catalogue.Profile(design.Document.Profile)!;
        var floor = catalogue.Floor(profile, design);
        if (floor.Found is not { } found)
            return FloorAnswers.FaultsOf(floor.Faults, profile, design, Place.Query);
        var choices = asked.Asked.Choices(catalogue.Today, asked.Channel);
        var log = await StoredLog.OfAsync(snapshot, asked.AsOf, choices);
        var (own, bench) = (await log.MovementsOf(design.Key), await log.BenchOf(design.Key));
        var orders = (await log.InOrdersWith(design.Key)).Where(line => access.IsWhole || catalogue.Design(line.Sku) is not null);
        var history = await StoredHistory.OfAsync(snapshot, [design.Key], [], asked.AsOf);
        var known = new KnownStudio([new KnownDesign(design.Key, found.Floor.UnitCost, history.MadeSoSince(design.Key))],
            key => catalogue.Channel(key)?.Sound, history.Listed);
        var studio = StudioEvidence.Of([.. own, .. orders], bench, log.Sources, null, known, choices);
        if (studio.Designs.SingleOrDefault() is not { } evidence)
            return RequestFault.CannotCompute(EvidenceReasonCodes.NothingLogged, $"The log has no line of \"{design.Key}\" within these days.");
        if (evidence is { Take: null, Shelf.Made: 0, Log.Bench.Count: 0, Log.LeftOut: 0 })
            return RequestFault.CannotCompute(EvidenceReasonCodes.NothingMade,
                $"The log has no piece of \"{design.Key}\" that was begun, made or sold within these days.");
        var basis = new EvidenceBasisAnswer
        {
            Profile = profile.Basis,
            Design = design.Basis,
            Channels = [.. evidence.Log.Sold.Select(line => line.Order.Channel).Distinct().Order(StringComparer.Ordinal)
                .Select(key => catalogue.Channel(key)!.Basis)],
            Log = log.Basis,
        };
        var newest = access.IsWhole ? await log.NewestDay() : studio.Newest;
        return StoredDesignEvidenceAnswer.Of(evidence, studio, newest, basis, asked.Workings);
    }
}
