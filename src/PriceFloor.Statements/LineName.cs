namespace PriceFloor.Statements;

/// <summary>The key that groups entries into one line of the draft.</summary>
public sealed record LineName(Placement To, CostKind? CostKind, string Name, decimal BusinessShare, TracedTo? TracedTo)
{
    /// <summary>With other income: whether tax was already taken.</summary>
    public IncomeKind? IncomeKind { get; init; }

    /// <summary>How often a year its rule says that it is paid.</summary>
    public int? TimesAYear { get; init; }

    /// <summary>The line that a rule leads to.</summary>
    public static LineName Of(ReadingRule rule) => new(rule.To, rule.CostKind, NameOf(rule), ShareOf(rule), rule.TracedTo)
    {
        IncomeKind = rule.IncomeKind,
        TimesAYear = (int?)rule.TimesAYear,
    };

    /// <summary>The name, shortened so that a few words fit after it.</summary>
    public string Short => Name.Length > Limits.NameLength - 20 ? Name[..(Limits.NameLength - 20)] : Name;

    private static decimal ShareOf(ReadingRule rule) => rule.BusinessShare ?? (rule.To == Placement.Business ? 1 : 0);

    private static string NameOf(ReadingRule rule) => rule.Name
        ?? (rule.CostKind is { } costKind ? Sentence(Kebab(costKind.ToString()).Replace('-', ' '))
            : rule.To == Placement.Household && rule.TextHas is { } text ? Sentence(Words.Single(text))
            : Sentence(Kebab(rule.To.ToString()).Replace('-', ' ')));

    private static string Kebab(string word) => System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(word);

    private static string Sentence(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..].ToLowerInvariant();
}
