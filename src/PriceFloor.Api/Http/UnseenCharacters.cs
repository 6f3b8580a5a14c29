using System.Globalization;

namespace PriceFloor.Api.Http;

/// <summary>Refuses invisible characters in every text, whatever its source: a body, a query, a cell of a sheet.</summary>
public static class UnseenCharacters
{
    /// <summary>The fault of a text, and how to fix it; null if there is none.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">Its name.</param>
    /// <param name="isStored">
    /// It was stored before direction marks were refused. They change no figure, so a text with one is not damaged; only whoever stores the document
    /// again must remove it.
    /// </param>
    public static string? FaultOf(string text, string name, bool isStored = false)
    {
        if (text.Any(char.IsControl))
            return $"{name} has a control character, such as a line break or tab; remove it.";
        return !isStored && text.FirstOrDefault(DirectionMarks.IsOne) is var mark and not '\0'
            ? string.Create(CultureInfo.InvariantCulture, $"{name} holds U+{(int)mark:X4} ({DirectionMarks.NameOf(mark)}), "
                + $"which is invisible and lets a text read as another; remove it, or type the text again.")
            : null;
    }
}
