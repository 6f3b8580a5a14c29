using PriceFloor.Api.Http;
using PriceFloor.Pricing;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>A document with the key and revision it was read from.</summary>
public sealed record Stored<T>(string Key, long? Revision, T Document)
{
    /// <summary>How an answer names what it rests on: <c>main@7</c>, or <c>inline</c>.</summary>
    public string Basis => Revision is { } number ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Key}@{number}") : "inline";
}

/// <summary>The documents as they stand (or stood) at one moment, read for a computation.</summary>
public sealed class Records(Snapshot snapshot, DateTimeOffset? asOf, DateTimeOffset now)
{
    private readonly long? _asOf = asOf is { } time ? Moment.Of(time) : null;

    /// <summary>The day for which the answer is given.</summary>
    public DateOnly Today { get; } = DateOnly.FromDateTime((asOf ?? now).UtcDateTime);

    /// <summary>Where a profile does not say when its year starts.</summary>
    public DateOnly YearStart => new(Today.Year, 1, 1);

    public Stored<CostProfile>? Profile(string key) => Find<CostProfile>("profile", key);

    public Stored<Design>? Design(string sku) => Find<Design>("design", sku);

    public Stored<Channel>? Channel(string key) => Find<Channel>("channel", key);

    public IReadOnlyList<Stored<Channel>> Channels() => [.. snapshot.List("channel", asOf: _asOf).Select(Parse<Channel>)];

    /// <summary>The prices listed for a design, by channel.</summary>
    public IReadOnlyDictionary<string, Stored<ListedPrice>> ListedPrices(string sku) =>
        snapshot.List("price", sku + "/", asOf: _asOf).ToDictionary(revision => revision.Key[(sku.Length + 1)..], Parse<ListedPrice>);

    private Stored<T>? Find<T>(string kind, string key) => snapshot.Find(kind, key, _asOf) is { } revision ? Parse<T>(revision) : null;

    private static Stored<T> Parse<T>(Revision revision) => new(revision.Key, revision.Number, WireJson.ReadDocument<T>(revision.Body!));
}
