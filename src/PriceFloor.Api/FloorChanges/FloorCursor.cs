using System.Globalization;
using PriceFloor.Storage;

namespace PriceFloor.Api.FloorChanges;

/// <summary>
/// The progress of a follower of floor changes: a position of the store and, if its limit cut an answer, the last position of that answer and the
/// last item sent. The mark binds it to the store's own history, so an older or another file in its place is noticed.
/// </summary>
/// <param name="Since">The follower knows everything up to this position.</param>
/// <param name="UpTo">The last position of a cut answer; null if no answer was cut.</param>
/// <param name="After">The last item of a cut answer, design and channel.</param>
public sealed record FloorCursor(long Since, long? UpTo = null, string? After = null)
{
    private const string Prefix = "p";

    public static bool IsOne(string text) => text.StartsWith(Prefix, StringComparison.Ordinal) && text.Length > 1 && char.IsAsciiDigit(text[1]);

    /// <summary>Null unless the cursor was given out for this history.</summary>
    public static async ValueTask<FloorCursor?> Read(string text, Store store)
    {
        var parts = text[Prefix.Length..].Split('.', 4);
        if (parts.Length is not (2 or 4) || !long.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var since))
            return null;
        long? upTo = parts.Length == 4 && long.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out var until) ? until : null;
        var cursor = new FloorCursor(since, upTo, upTo is null ? null : parts[3]);
        return (upTo ?? since) >= since && (upTo ?? since) <= store.Position && await cursor.Text(store) == text ? cursor : null;
    }

    public async ValueTask<string> Text(Store store)
    {
        var mark = await store.MarkAt(UpTo ?? Since);
        return UpTo is { } upTo
            ? string.Create(CultureInfo.InvariantCulture, $"{Prefix}{Since}.{mark}.{upTo}.{After}")
            : string.Create(CultureInfo.InvariantCulture, $"{Prefix}{Since}.{mark}");
    }
}
