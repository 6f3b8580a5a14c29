using System.Collections.Frozen;
using PriceFloor.Api.Documents;
using PriceFloor.Statements;

namespace PriceFloor.Api.Catalogues;

/// <summary>
/// All documents of one moment. While the documents behind it are the same revisions, it returns the same object each time, so computed results
/// can be kept beside them.
/// </summary>
internal interface IDocuments
{
    /// <summary>A design for which no price is listed.</summary>
    static readonly IReadOnlyDictionary<string, Stored<ListedPrice>> NothingListed = FrozenDictionary<string, Stored<ListedPrice>>.Empty;

    Stored<CostProfile>? Profile(string key);

    Stored<Design>? Design(string sku);

    /// <summary>The design that has this name as an alias.</summary>
    Stored<Design>? DesignAlias(string alias);

    /// <summary>The key of a design that differs from a name only by case.</summary>
    string? KeyInOtherCase(string name);

    Stored<Channel>? Channel(string key);

    Stored<ReadingRules>? ReadingRules(string key);

    Stored<Plan>? Plan(string key);

    /// <summary>All plans in order of key.</summary>
    IReadOnlyList<Stored<Plan>> Plans { get; }

    /// <summary>All channels in order of key.</summary>
    IReadOnlyList<Stored<Channel>> Channels { get; }

    /// <summary>All designs in order of key.</summary>
    IReadOnlyList<Stored<Design>> Designs { get; }

    /// <summary>The prices listed for a design, by <see cref="ListedPriceKey.Place"/>: its own by channel, and those of its other names.</summary>
    IReadOnlyDictionary<string, Stored<ListedPrice>> ListedPrices(string sku);
}
