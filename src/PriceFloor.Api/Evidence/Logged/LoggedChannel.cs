using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Lines;
using PriceFloor.Storage;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The evidence of one channel from its stored orders.</summary>
internal static class LoggedChannel
{
    public static async ValueTask<Outcome<StoredChannelEvidenceAnswer>> OfAsync(Snapshot snapshot, LogWatch watch, Catalogue catalogue,
        Stored<Channel> channel, LoggedEvidenceQuery asked, ProfileAccess access)
    {
        var choices = asked.Asked.Choices(catalogue.Today);
        var log = await StoredLog.OfAsync(snapshot, watch, asked.AsOf, choices);
        var lines = await log.MovementsOn(channel.Key);
        if (!access.IsWhole)
            lines.RemoveAll(line => catalogue.Design(line.Sku) is null);
        var prices = lines.Where(line => line is { What: MovementKind.Sold, Listed: null }).Select(line => (line.Sku, channel.Key)).Distinct();
        var history = await StoredHistory.OfAsync(snapshot, [], prices, asked.AsOf);
        var known = new KnownStudio([], key => key == channel.Key ? channel.Document : null, history.Listed);
        var studio = StudioEvidence.Of(lines, [], [], null, known, choices);
        if (studio.Channels.SingleOrDefault() is not { } evidence)
            return RequestFault.CannotCompute(EvidenceReasonCodes.NothingLogged, $"The log has no sale on \"{channel.Key}\" within these days.");
        return StoredChannelEvidenceAnswer.Of(evidence, EvidenceWarnings.OfAge(studio.Newest, choices.To),
            new EvidenceBasisAnswer { Channel = channel.Basis, Log = log.Basis });
    }
}
