using System.Globalization;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Changes;

/// <summary>
/// A token of a pointer inside a list: an index, <c>*</c> for every item, or else the name of one item. A name outlives
/// insertions, an index does not.
/// </summary>
public static class ListToken
{
    /// <summary>Every item.</summary>
    public const string Every = "*";

    /// <summary>The index that a token is; null if it is none. By RFC 6901 an index has no leading zero.</summary>
    public static int? Index(string token) =>
        token is "0" || (token is [>= '1' and <= '9', ..] && token.AsSpan().IndexOfAnyExceptInRange('0', '9') < 0)
            ? int.TryParse(token, NumberStyles.None, CultureInfo.InvariantCulture, out var index) ? index : int.MaxValue
            : null;

    /// <summary>
    /// The items that a token leads to. It leads nowhere (<c>leads-nowhere</c>) if the list has no such index or name, and must not be the name of
    /// two items (<c>ambiguous-name</c>).
    /// </summary>
    /// <param name="token">The token, unescaped.</param>
    /// <param name="names">The name of each item of the list; null for an item without one.</param>
    /// <param name="pointer">The pointer of the token, for the fault.</param>
    /// <param name="hints">Whether the fault may name items: the nearest, or all if they are few.</param>
    public static Outcome<List<int>> Items(string token, IReadOnlyList<string?> names, string pointer, bool hints = true)
    {
        if (token == Every)
            return Enumerable.Range(0, names.Count).ToList();
        if (Index(token) is { } index)
            return index < names.Count
                ? new List<int> { index }
                : Nowhere(FormattableString.Invariant($"The list has {names.Count} items, and the first has the index 0."));
        var found = names.Index().Where(item => item.Item == token).Select(item => item.Index).ToList();
        return found.Count switch
        {
            1 => found,
            0 => Nowhere($"No item of the list is named \"{token}\"{(hints ? Hint() : "")}; case counts."),
            _ => new Fault(pointer, FaultCodes.AmbiguousName,
                $"{found.Count} items of the list are named \"{token}\"; give one of them another name, or use its index."),
        };

        string Hint() => NearestName.Hint(token, [.. names.OfType<string>().Distinct()]);

        Fault Nowhere(string detail) => new(pointer, FaultCodes.LeadsNowhere, detail);
    }
}
