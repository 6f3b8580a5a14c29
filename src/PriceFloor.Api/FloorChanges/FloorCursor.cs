using System.Globalization;
using PriceFloor.Storage;

namespace PriceFloor.Api.FloorChanges;

/// <summary>
/// Where a follower of floor changes stands: a position of the store, and, where an answer was cut by its limit, up to which position that answer
/// goes and after which item it goes on. The mark binds it to the store's own history, so that an older or another file in its place is noticed.
/// </summary>
/// <param name="Since">All up to this position is known to the follower.</param>
/// <param name="UpTo">The position that a cut answer goes up to; null where there is none under way.</param>
/// <param name="After">The last item of a cut answer, design and channel.</param>
public sealed record FloorCursor(long Since, long? UpTo = null, string? After = null)
{
    private const string Prefix = "p";

    public static bool IsOne(string text) => text.StartsWith(Prefix, StringComparison.Ordinal) && text.Length > 1 && char.IsAsciiDigit(text[1]);

    /// <summary>Null unless it was given out for this history.</summary>
    public static FloorCursor? Read(string text, Store store)
    {
        var parts = text[Prefix.Length..].Split('.', 4);
        if (parts.Length is not (2 or 4) || !long.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var since))
            return null;
        long? upTo = parts.Length == 4 && long.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out var until) ? until : null;
        var cursor = new FloorCursor(since, upTo, upTo is null ? null : parts[3]);
        return (upTo ?? since) >= since && (upTo ?? since) <= store.Position && cursor.Text(store) == text ? cursor : null;
    }

    public string Text(Store store) => UpTo is { } upTo
        ? string.Create(CultureInfo.InvariantCulture, $"{Prefix}{Since}.{store.MarkAt(upTo)}.{upTo}.{After}")
        : string.Create(CultureInfo.InvariantCulture, $"{Prefix}{Since}.{store.MarkAt(Since)}");
}
