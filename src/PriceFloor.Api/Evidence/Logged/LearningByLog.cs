using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Quotes;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Findings;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The learning of designs for quotes: that of their evidence.</summary>
public sealed class LearningByLog(LogWatch watch) : IDesignLearning
{
    public async ValueTask<DesignLearnings> Of(Snapshot snapshot, Catalogue catalogue, IEnumerable<Stored<Design>> designs, DateTimeOffset? asOf)
    {
        var choices = new EvidenceChoices { To = catalogue.Today };
        var log = snapshot is Writing writing ? await StoredLog.ApartAsync(writing, watch, choices)
            : await StoredLog.OfAsync(snapshot, watch, asOf, choices);
        var found = new Dictionary<string, Learning?>(StringComparer.Ordinal);
        foreach (var design in designs)
            if (!found.ContainsKey(design.Key))
                found[design.Key] = await Of(snapshot, log, catalogue, design, asOf);
        return new DesignLearnings(log.Basis, found);
    }

    private static async ValueTask<Learning?> Of(Snapshot snapshot, StoredLog log, Catalogue catalogue, Stored<Design> design, DateTimeOffset? asOf)
    {
        var bench = await log.BenchOf(design.Key);
        if (bench.Count == 0 || catalogue.Profile(design.Document.Profile) is not { } profile)
            return null;
        var history = await StoredHistory.OfAsync(snapshot, [design.Key], [], asOf);
        return LoggedLearning.Of(design.Document, profile.Document.Calendar, bench, history.MadeSoSince(design.Key), log.Choices);
    }
}
