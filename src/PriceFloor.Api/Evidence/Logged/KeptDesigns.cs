using System.Collections.Concurrent;
using PriceFloor.Api.Catalogues;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>
/// What was found of designs, by question, for as long as their lines and the documents that they rest on are the same. A sale spoils one design.
/// </summary>
/// <param name="most">So many questions are kept.</param>
internal sealed class KeptDesigns<T>(int most) where T : class
{
    private readonly ConcurrentDictionary<object, ConcurrentDictionary<string, Kept>> _kept = new();

    /// <summary>What is kept; null if nothing is, or if something that it rests on is another now.</summary>
    public T? Find(object question, long? stamp, Catalogue catalogue, DesignFloor floor, string sources) =>
        stamp is { } same && _kept.TryGetValue(question, out var designs) && designs.TryGetValue(floor.Design.Key, out var kept)
            && kept.RestsOn.IsStill(same, catalogue, floor, sources) ? kept.Found : null;

    public void Keep(object question, RestsOn restsOn, T found)
    {
        while (_kept.Count >= most && !_kept.ContainsKey(question))
            _kept.TryRemove(_kept.First().Key, out _);
        _kept.GetOrAdd(question, _ => new())[restsOn.Floor.Design.Key] = new Kept(restsOn, found);
    }

    private sealed record Kept(RestsOn RestsOn, T Found);
}
