using System.Text;
using System.Text.Json;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>
/// Reads stored documents as strictly as those in requests: a malformed number, an unknown word or a figure out of range is damage, never a zero or a
/// default. A floor that is too low is the one way in which this service must not fail.
/// </summary>
public static class StoredText<T> where T : class
{
    private static readonly BodySchema s_shape = BodySchema.Of(typeof(T));

    /// <summary>The document, or what is wrong with its text.</summary>
    public static (T? Document, string? Fault) Read(string body)
    {
        try
        {
            var bytes = Encoding.UTF8.GetBytes(body);
            if (BodyReader.Check(bytes, s_shape, isStored: true) is [var first, ..])
                return (null, $"{first.Pointer}: {first.Detail}");
            var document = JsonSerializer.Deserialize<T>(bytes, WireJson.Options)!;
            return FaultsOf(document).FirstOrDefault() is { } fault ? (null, $"#{fault.Pointer}: {fault.Detail}") : (document, null);
        }
        catch (UnreadableException e)
        {
            return (null, $"{e.Error.Pointer}: {e.Error.Detail}");
        }
    }

    /// <summary>The rules between fields. The model checks the rest when it computes.</summary>
    private static IEnumerable<Fault> FaultsOf(T document) => document switch
    {
        CostProfile profile => ProfileRules.Faults(profile),
        Design design => DesignRules.Faults(design),
        Channel channel => ChannelRules.Faults(channel),
        Quote quote => QuoteRules.Faults(quote),
        Plan plan => PlanRules.Faults(plan),
        ReadingRules rules => ReadingRuleFaults.Of(rules, _ => true),
        Scenario scenario => DocumentChangeRules.Faults(scenario.Changes),
        StatementLayout layout => layout.Faults(),
        ListedPrice { Currency: { } code } when Currency.Find(code) is null =>
            [new Fault("/currency", FaultCodes.UnknownCurrency, $"there is no currency {code}.")],
        _ => [],
    };

    /// <summary>The document of a revision that is not a deletion. Throws <see cref="DamagedDocumentException"/>.</summary>
    public static T Of(Revision revision) =>
        Read(revision.Body!) is ({ } document, _) ? document : throw new DamagedDocumentException(revision.Kind, revision.Key, revision.Number);
}

/// <summary>A stored document is damaged: what needs it has no answer, and everything else works.</summary>
public sealed class DamagedDocumentException(string kind, string key, long revision)
    : Exception(FormattableString.Invariant($"The stored {kind} \"{key}\" (revision {revision}) is damaged, so nothing is computed from it."))
{
    /// <summary>The warnings of an answer about many channels for those that it leaves out.</summary>
    public static IEnumerable<Warning> WarningsOf(IEnumerable<Stored<Channel>> channels, string pointer) =>
        channels.Where(channel => channel.Sound is null)
            .Select(channel => new Warning(ReasonCodes.DamagedDocument,
                $"The channel \"{channel.Key}\" is damaged in the store, so it is left out here; PUT it again.", pointer));
}
