using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Storage;

namespace PriceFloor.Api.Quotes;

/// <summary>Says how the work of designs gets quicker, by the log.</summary>
public interface IDesignLearning
{
    /// <summary>The learning of each design, null where the log shows none.</summary>
    /// <param name="snapshot">The store, or a write to it.</param>
    /// <param name="catalogue">The documents of the moment.</param>
    /// <param name="designs">The designs.</param>
    /// <param name="asOf">The moment; now if null.</param>
    ValueTask<DesignLearnings> Of(Snapshot snapshot, Catalogue catalogue, IEnumerable<Stored<Design>> designs, DateTimeOffset? asOf);
}

/// <summary>What the log says of some designs.</summary>
/// <param name="Log">How far it had come.</param>
/// <param name="BySku">The learning of each; null where it shows none.</param>
public sealed record DesignLearnings(string Log, IReadOnlyDictionary<string, Learning?> BySku);
