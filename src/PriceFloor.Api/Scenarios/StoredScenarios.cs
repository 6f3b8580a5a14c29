using PriceFloor.Api.Access;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.Scenarios;

/// <summary>The stored scenarios that a request names, as far as the caller's key sees them.</summary>
public static class StoredScenarios
{
    /// <summary>Each scenario of these keys that is stored for the profile, now or at a moment.</summary>
    public static async Task<IReadOnlyDictionary<string, Stored<Scenario>>> Of(Store store, Caller caller, string profile, IEnumerable<string?> keys,
        DateTimeOffset? asOf)
    {
        var asked = keys.OfType<string>().Distinct().ToList();
        if (asked.Count == 0)
            return new Dictionary<string, Stored<Scenario>>();
        return await store.ReadAsync(snapshot => (IReadOnlyDictionary<string, Stored<Scenario>>)asked
            .Select(key => snapshot.Find(Kinds.Scenario, key, asOf is { } moment ? Moment.Of(moment) : null)).OfType<Revision>()
            .Where(revision => caller.Access.Sees(snapshot, revision)).Select(Stored<Scenario>.Of)
            .Where(scenario => scenario.Document.Profile == profile).ToDictionary(scenario => scenario.Key));
    }
}
