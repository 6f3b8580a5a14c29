using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Shelves;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The evidence of a profile from the stored lines of its designs and days.</summary>
internal static class LoggedProfile
{
    public static async ValueTask<Outcome<StoredProfileEvidenceAnswer>> OfAsync(Snapshot snapshot, LogWatch watch, Catalogue catalogue,
        Stored<CostProfile> profile, LoggedEvidenceQuery asked, ProfileAccess access)
    {
        var choices = asked.Asked.Choices(catalogue.Today);
        var log = await StoredLog.OfAsync(snapshot, watch, asked.AsOf, choices);
        var outcome = await FoundAsync(log, catalogue, profile, access);
        if (outcome.Found is not { } found)
            return outcome.Faults.ToList();
        var newest = access.IsWhole ? await log.NewestDay() : null;
        return StoredProfileEvidenceAnswer.Of(profile.Key, profile.Document, found, EvidenceWarnings.OfAge(newest, choices.To),
            new EvidenceBasisAnswer { Profile = profile.Basis, Designs = found.Designs, Log = log.Basis });
    }

    /// <summary>What the lines say, before it is an answer.</summary>
    public static async ValueTask<Outcome<ProfileEvidence>> FoundAsync(StoredLog log, Catalogue catalogue, Stored<CostProfile> profile,
        ProfileAccess access)
    {
        var choices = log.Choices;
        var designs = catalogue.Designs.Where(design => design.Sound?.Profile == profile.Key).ToList();
        var (shelf, logged) = await Shelf(log, designs, choices);
        var days = access.IsWhole ? await WholeDays(log, designs) : [];
        if (logged.Count == 0 && days.Count == 0)
            return RequestFault.CannotCompute(EvidenceReasonCodes.NothingLogged,
                $"The log has no line of a design of \"{profile.Key}\" within these days.");
        if (shelf.Times.Count == 0 && days.Count == 0)
            return RequestFault.CannotCompute(EvidenceReasonCodes.NothingMade,
                $"The log has no piece of a design of \"{profile.Key}\" that was made within these days, and no whole days at the bench.");
        return ProfileEvidence.Of(profile.Document, shelf, days, choices) with { Designs = logged };
    }

    /// <summary>One design after another, so that no more than one design's lines are ever held.</summary>
    private static async ValueTask<(ShelfTimes Shelf, List<string> Logged)> Shelf(StoredLog log, List<Stored<Design>> designs,
        EvidenceChoices choices)
    {
        var (shelf, logged) = (new ShelfTimes(), new List<string>());
        foreach (var design in designs)
        {
            var (movements, bench) = (await log.MovementsOf(design.Key), await log.BenchOf(design.Key));
            if (movements.Count + bench.Count == 0)
                continue;
            shelf.Add(StudioEvidence.ShelfOf(design.Key, design.Document, movements, bench, log.Sources, choices));
            logged.Add(design.Basis);
        }

        return (shelf, logged);
    }

    /// <summary>Days have work of other profiles' designs and work away from pieces; the latter is everybody's.</summary>
    private static async ValueTask<List<BenchEntry>> WholeDays(StoredLog log, List<Stored<Design>> designs)
    {
        var own = designs.Select(design => design.Key).ToHashSet(StringComparer.Ordinal);
        var days = await log.WholeDays();
        days.RemoveAll(entry => entry.Sku is { } sku && !own.Contains(sku));
        return days;
    }
}
