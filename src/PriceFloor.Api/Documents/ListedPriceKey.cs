namespace PriceFloor.Api.Documents;

/// <summary>The key of a listed price: a design on a channel, written as <c>RB-014/web</c>. No key of either has a slash.</summary>
public readonly record struct ListedPriceKey(string Sku, string Channel)
{
    /// <summary>Reads a key as the store has it.</summary>
    public static ListedPriceKey Of(string stored) =>
        Find(stored) ?? throw new ArgumentException($"\"{stored}\" is not the key of a listed price.", nameof(stored));

    /// <summary>Reads a text that may be such a key; null if it has no slash, or more than one.</summary>
    public static ListedPriceKey? Find(string text) => text.Split('/') is [var sku, var channel] ? new(sku, channel) : null;

    /// <summary>The prefix of the keys of all prices of a design.</summary>
    public static string Beginning(string sku) => sku + "/";

    public override string ToString() => $"{Sku}/{Channel}";
}
