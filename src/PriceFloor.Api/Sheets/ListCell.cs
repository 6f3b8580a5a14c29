using System.Text;
using System.Text.Json;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// A list in a cell. Names are written as people write them, with | between them: <c>Pendant blue | Pendant green</c>. Names that cannot be
/// told apart that way, and all other lists, are JSON.
/// </summary>
public static class ListCell
{
    private const char Mark = '|';

    private static readonly char[] s_marks = [Mark, '\n', '\r'];

    /// <summary>The names as one cell; reading it gives the same names.</summary>
    public static string Of(IReadOnlyList<string> names) => names.All(IsPlain) && names is not [['[' or '\'', ..], ..] && !IsLikeNumber(names)
        ? string.Join($" {Mark} ", names)
        : JsonSerializer.Serialize(names, WireJson.Options);

    /// <summary>The list as JSON, or why the cell is none.</summary>
    /// <param name="cell">The cell, which is not empty.</param>
    /// <param name="name">Its column.</param>
    /// <param name="isOfNames">Whether the list has names, which need not be JSON.</param>
    public static (byte[] Json, (Code Code, string Detail)? Fault) Read(ReadOnlySpan<byte> cell, string name, bool isOfNames)
    {
        var text = Encoding.UTF8.GetString(cell); // what is not UTF-8 is replaced, as in a text
        if (isOfNames && !text.TrimStart().StartsWith('['))
            return (JsonSerializer.SerializeToUtf8Bytes(
                text.Split(s_marks, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries), WireJson.Options), null);
        return (Encoding.UTF8.GetBytes(text), Against(cell, name, isOfNames));
    }

    private static (Code Code, string Detail)? Against(ReadOnlySpan<byte> cell, string name, bool isOfNames)
    {
        var write = isOfNames ? $"write the names with {Mark} between them, such as Pendant blue {Mark} Pendant green, or as [\"Pendant blue\"]"
            : "write a list in square brackets, as an export writes it";
        try
        {
            if (!JsonText.IsWhole(cell))
                return (InputCodes.Malformed, $"{name}: {JsonText.HalfAPair}");
            return cell.TrimStart(" \t\r\n"u8) is [(byte)'[', ..] ? null
                : (InputCodes.NotAList, $"The cell {name} must be a list (JSON): {write}.");
        }
        catch (JsonException)
        {
            return (InputCodes.Malformed, $"The cell {name} is not a list (JSON); {write}.");
        }
    }

    /// <summary>A spreadsheet would make a number or a day of a single name such as 0071.</summary>
    private static bool IsLikeNumber(IReadOnlyList<string> names) => names is [var only] && char.IsAsciiDigit(only[0]);

    private static bool IsPlain(string name) =>
        name.Length > 0 && name.IndexOfAny(s_marks) < 0 && !char.IsWhiteSpace(name[0]) && !char.IsWhiteSpace(name[^1]);
}
