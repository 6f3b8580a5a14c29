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
        return await store.ReadAsync(async snapshot =>
        {
            var found = new Dictionary<string, Stored<Scenario>>();
            foreach (var key in asked)
                if (await caller.Access.Seen(snapshot, snapshot.Find(Kinds.Scenario, key, asOf is { } at ? Moment.Of(at) : null)) is { } revision
                        && Stored<Scenario>.Of(revision) is var scenario && scenario.Document.Profile == profile)
                    found.Add(key, scenario);
            return found;
        });
    }
}
