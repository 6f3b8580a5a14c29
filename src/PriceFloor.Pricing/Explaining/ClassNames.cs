namespace PriceFloor.Pricing.Explaining;

/// <summary>
/// Tells a class by its name, because a seat in a class is a design like any other and its income a line like any other: "Evening classes" is one,
/// "First-class pendant" is not.
/// </summary>
internal static class ClassNames
{
    private static readonly HashSet<string> s_words = new(StringComparer.OrdinalIgnoreCase)
    {
        "class", "classes", "course", "courses", "lesson", "lessons", "workshop", "workshops",
    };

    /// <summary>Whether one of the words of a name says that it is a class.</summary>
    public static bool IsOne(string? name) => name is not null && WordsOf(name).Any(s_words.Contains);

    /// <summary>A word goes on over a hyphen: "first-class" is one word.</summary>
    private static IEnumerable<string> WordsOf(string name)
    {
        for (var (from, at) = (0, 0); at <= name.Length; at++)
            if (at == name.Length || (!char.IsLetterOrDigit(name[at]) && name[at] != '-'))
            {
                yield return name[from..at];
                from = at + 1;
            }
    }
}
