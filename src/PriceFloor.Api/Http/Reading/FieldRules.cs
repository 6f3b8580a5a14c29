namespace PriceFloor.Api.Http.Reading;

/// <summary>
/// The rules of a single field, whatever the source of its value: a body, a stored text or a document that the service made itself.
/// </summary>
public static class FieldRules
{
    /// <summary>The name of the field at a pointer in messages: its last three parts, and the name of the list if they begin with an index.</summary>
    public static string Name(string pointer)
    {
        var parts = pointer.Split('/')[1..];
        return parts.Length == 0 ? "The body"
            : string.Join('.', parts.TakeLast(parts.Length > 3 && char.IsAsciiDigit(parts[^3][0]) ? 4 : 3));
    }

    /// <summary>The fault of a number as text; null if there is none.</summary>
    public static InputError? OfNumber(ReadOnlySpan<char> text, string pointer, NumberFieldAttribute? field) =>
        NumberText.Read(text, name: "", field).Code is not null && NumberText.Read(text, Name(pointer), field) is (_, { } code, { } detail)
            ? Error(pointer, code, detail) // the name is built only if there is something to report
            : null;

    /// <summary>The fault of a number whose digits do not count; null if there is none.</summary>
    public static InputError? OfRange(decimal value, string pointer, NumberFieldAttribute? field) =>
        NumberText.OutOfRange(value, field, () => Name(pointer)) is { } detail ? Error(pointer, FaultCodes.OutOfRange, detail) : null;

    /// <summary>The fault of a text; null if there is none.</summary>
    public static InputError? OfText(string text, string pointer, int minimum, int maximum, bool isStored = false) =>
        UnseenCharacters.FaultOf(text, Name(pointer), isStored) is { } unseen ? Error(pointer, InputCodes.ControlCharacter, unseen)
        : text.Length < minimum ? Error(pointer, FaultCodes.Required, $"{Name(pointer)} is empty.")
        : text.Length > maximum ? Error(pointer, InputCodes.TooLong, $"{Name(pointer)} has {text.Length} characters; at most {maximum} are taken.")
        : null;

    /// <summary>The fault of a list's length; null if there is none.</summary>
    public static InputError? OfCount(int count, string pointer, BodySchema.Array list) => OfCount(count, pointer, list.Minimum, list.Maximum);

    /// <summary>The same between two bounds.</summary>
    public static InputError? OfCount(int count, string pointer, int minimum, int maximum) =>
        count < minimum ? Error(pointer, FaultCodes.Required, $"{Name(pointer)} is empty; give at least one.")
        : count > maximum
            ? Error(pointer, InputCodes.TooMany, $"{Name(pointer)} has {count} lines; at most {maximum} are taken. Put similar lines together.")
        : null;

    /// <summary>A member that a document must have is not there.</summary>
    public static InputError Missing(string name, string pointer) => Error(pointer, FaultCodes.Required, $"{name} is missing.");

    private static InputError Error(string pointer, Code code, string detail) => new() { Pointer = pointer, Code = code, Detail = detail };
}
