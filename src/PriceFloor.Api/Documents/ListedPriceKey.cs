namespace PriceFloor.Api.Documents;

/// <summary>
/// The key of a listed price: a design on a channel, written as <c>RB-014/web</c>, or one of its other names there, <c>RB-014/web/RB-014 blue</c>.
/// No key of a design or a channel has a slash; a name may have one.
/// </summary>
/// <param name="Sku">Key of the design.</param>
/// <param name="Channel">Key of the channel.</param>
/// <param name="Alias">The name of the design that has a price of its own; null for the design itself.</param>
public readonly record struct ListedPriceKey(string Sku, string Channel, string? Alias = null)
{
    /// <summary>The key without the design, by which a design's prices are found: <c>web</c>, or <c>web/RB-014 blue</c>.</summary>
    public string Place => PlaceOf(Channel, Alias);

    /// <summary>Reads a key as the store has it.</summary>
    public static ListedPriceKey Of(string stored) =>
        Read(stored) ?? throw new ArgumentException($"\"{stored}\" is not the key of a listed price.", nameof(stored));

    /// <summary>Reads a text that may be the key of a design's own price; null if it has no slash, or more than one.</summary>
    public static ListedPriceKey? Find(string text) => Read(text) is { Alias: null } found ? found : null;

    /// <summary>Reads a text that may be the key of any listed price; null if it has no slash.</summary>
    public static ListedPriceKey? Read(string text) => text.Split('/', 3) switch
    {
        [var sku, var channel] => new(sku, channel),
        [var sku, var channel, var alias] => new(sku, channel, alias),
        _ => null,
    };

    /// <summary>Where a design's prices have the one on a channel, of the design itself or of another name.</summary>
    public static string PlaceOf(string channel, string? alias) => alias is null ? channel : $"{channel}/{alias}";

    /// <summary>The prefix of the keys of all prices of a design.</summary>
    public static string Beginning(string sku) => sku + "/";

    public override string ToString() => $"{Sku}/{Place}";
}
