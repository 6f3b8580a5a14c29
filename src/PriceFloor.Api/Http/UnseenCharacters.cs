using System.Globalization;

namespace PriceFloor.Api.Http;

/// <summary>Characters that nobody sees are refused in every text, whatever brings it: a body, a query, a cell of a sheet.</summary>
public static class UnseenCharacters
{
    /// <summary>What is wrong with a text, and how to fix it; null where nothing is.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="isStored">
    /// It was stored before direction marks were refused. They change no figure, so that a text with one is no damage; only who stores the document
    /// again must take it out.
    /// </param>
    public static string? FaultOf(string text, string name, bool isStored = false)
    {
        if (text.Any(char.IsControl))
            return $"{name} holds a control character, such as a line break or tab; take it out.";
        return !isStored && text.FirstOrDefault(DirectionMarks.IsOne) is var mark and not '\0'
            ? string.Create(CultureInfo.InvariantCulture, $"{name} holds U+{(int)mark:X4} ({DirectionMarks.NameOf(mark)}), "
                + $"which is not seen and lets a text read as another; take it out, or type the text anew.")
            : null;
    }
}
