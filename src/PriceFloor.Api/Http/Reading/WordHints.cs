namespace PriceFloor.Api.Http.Reading;

/// <summary>What a message adds when a body has a property or a word that does not exist there.</summary>
internal static class WordHints
{
    private const int MostNameLength = 64;

    /// <summary>Properties of a whole answer whose draft is the document.</summary>
    private static readonly string[] s_ofStatements = ["files", "draft"];

    /// <summary>The property that was probably meant, or else those that there are.</summary>
    public static string OfProperty(string name, BodySchema.Members members) =>
        members.Type == typeof(CostProfile) && s_ofStatements.Contains(name)
            ? " (it is one of the whole answer to POST /v1/statements: send its draft alone, which ?only=draft answers)"
        : name.Length <= MostNameLength && NearestName.Of(name, members.All.Select(known => known.Name)) is { } close ? $" (\"{close}\" is)"
        : members.All.Length > 0 ? $" (it takes {string.Join(", ", members.All.Select(known => known.Name))})"
        : "";

    /// <summary>The word that was probably meant, or how the model says what the trade calls by this word.</summary>
    public static string OfWord(string text, IReadOnlyList<string> words) =>
        words.Contains("wholesale") && text.Contains("consign", StringComparison.OrdinalIgnoreCase)
            ? " A gallery on consignment sells \"retail\" and keeps a shopShare."
        : words.Contains("home-workspace") && CostKinds.CalledBy(text) is { } kind
            ? $" It is probably \"{KebabWords.Of(kind)}\": {CostKinds.Meanings[kind]}"
        : NearestName.Of(text, words) is { } close ? $" Probably \"{close}\" is meant." : "";
}
