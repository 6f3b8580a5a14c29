namespace PriceFloor.Pricing.Documents;

/// <summary>
/// The characters of Unicode that nobody sees and that turn the direction of the letters beside them, so that a name reads as another one:
/// <c>U+202E</c> before "gpj" shows "jpg".
/// </summary>
public static class DirectionMarks
{
    /// <summary>Whether a character is one of them.</summary>
    public static bool IsOne(char letter) => NameOf(letter) is not null;

    /// <summary>What Unicode calls it, U+202E "RIGHT-TO-LEFT OVERRIDE"; null if it is none of them.</summary>
    public static string? NameOf(char letter) => letter switch
    {
        '\u061C' => "ARABIC LETTER MARK",
        '\u200E' => "LEFT-TO-RIGHT MARK",
        '\u200F' => "RIGHT-TO-LEFT MARK",
        '\u202A' => "LEFT-TO-RIGHT EMBEDDING",
        '\u202B' => "RIGHT-TO-LEFT EMBEDDING",
        '\u202C' => "POP DIRECTIONAL FORMATTING",
        '\u202D' => "LEFT-TO-RIGHT OVERRIDE",
        '\u202E' => "RIGHT-TO-LEFT OVERRIDE",
        '\u2066' => "LEFT-TO-RIGHT ISOLATE",
        '\u2067' => "RIGHT-TO-LEFT ISOLATE",
        '\u2068' => "FIRST STRONG ISOLATE",
        '\u2069' => "POP DIRECTIONAL ISOLATE",
        _ => null,
    };
}
