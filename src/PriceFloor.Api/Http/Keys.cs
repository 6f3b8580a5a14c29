namespace PriceFloor.Api.Http;

/// <summary>Keys of documents, named by the caller.</summary>
public static class Keys
{
    public const string Rule = "1 to 64 letters, digits and . _ ~ : + -";

    /// <summary>The last segment of the addresses that take many documents at once; addresses match in any case.</summary>
    private const string Batch = "batch";

    /// <summary>
    /// Why nothing new may be stored under the key; null if it may. A document that was stored under it before stays readable and can be deleted.
    /// </summary>
    public static InputError? FaultIn(string key) =>
        key is "." or ".." ? new InputError
        {
            Parameter = "key",
            Code = InputCodes.BadKey,
            Detail = $"Nothing can be named \"{key}\", because addresses drop such a segment; choose another key.",
        }
        : key.Equals(Batch, StringComparison.OrdinalIgnoreCase) ? new InputError
        {
            Parameter = "key",
            Code = InputCodes.BadKey,
            Detail = $"Nothing can be named \"{key}\", because that is the address of batches; choose another key.",
        }
        : !IsValid(key) ? new InputError { Parameter = "key", Code = InputCodes.BadKey, Detail = $"A key is {Rule}." }
        : null;

    public static bool IsValid(string key) =>
        key.Length is >= 1 and <= Limits.KeyLength && key is not ("." or "..")
        && key.All(letter => char.IsAsciiLetterOrDigit(letter) || ".-_~:+".Contains(letter, StringComparison.Ordinal));
}
