namespace PriceFloor.Statements;

/// <summary>Similar lines that no rule took, and where similar lines were placed.</summary>
/// <param name="Text">The text of the newest of them.</param>
/// <param name="Paid">In or out.</param>
/// <param name="Entries">The lines.</param>
/// <param name="Suggested">Where the most similar lines were placed; null if none is similar.</param>
/// <param name="Because">The word that they share.</param>
/// <param name="Common">What all the texts have in common; null if there is nothing.</param>
/// <param name="Has">The part of it that says who was paid, so that a rule with it as textHas takes all of them.</param>
public sealed record Unplaced(string Text, Paid Paid, IReadOnlyList<Sorted> Entries, LineName? Suggested, string? Because, string? Common,
    string? Has)
{
    /// <summary>A pattern that matches all the texts, if they have only their words in common and not what is between them.</summary>
    public string? Pattern => Common is null ? CommonText.PatternOf(Text) : null;

    public decimal Total => Entries.Sum(sorted => decimal.Abs(sorted.Entry.Amount));

    /// <summary>Largest first.</summary>
    public static IReadOnlyList<Unplaced> In(Sorting sorting)
    {
        var payees = new PayeeWords(sorting.All.Select(sorted => sorted.Entry.Transaction.Text));
        var placed = PlacedByWord(sorting, payees);
        return [.. sorting.Of[LineOutcome.Unplaced]
            .GroupBy(sorted => (Words.PayeeKey(sorted.Entry.Transaction.Text), sorted.Entry.Transaction.Paid))
            .Select(alike => GroupOf(alike.Key.Paid, [.. alike], placed, payees))
            .OrderByDescending(group => group.Total).ThenBy(group => group.Text, StringComparer.Ordinal)];
    }

    private static Unplaced GroupOf(Paid paid, IReadOnlyList<Sorted> entries, Dictionary<(string, Paid), Shared> placed, PayeeWords payees)
    {
        var text = entries.MaxBy(sorted => sorted.Entry.Date)!.Entry.Transaction.Text;
        var common = CommonText.Of(entries.Select(sorted => sorted.Entry.Transaction.Text));
        // The rarest shared word says most: one that leads to a single line, rather than "card" or "payment", which lead to many.
        var best = payees.Of(text).Where(word => placed.TryGetValue((word, paid), out var shared) && !(shared.IsEnd && payees.IsEnd(word, text)))
            .OrderBy(word => placed[(word, paid)].Lines.Count).ThenByDescending(word => word.Length).FirstOrDefault();
        var lines = best is null ? [] : placed[(best, paid)].Lines;
        return new Unplaced(text, paid, entries, lines.Count == 1 ? lines.First() : null, lines.Count == 1 ? best : null, common,
            common is null ? null : payees.Without(common));
    }

    private static Dictionary<(string, Paid), Shared> PlacedByWord(Sorting sorting, PayeeWords payees)
    {
        var placed = new Dictionary<(string, Paid), Shared>();
        foreach (var (text, paid, name) in sorting.Of[LineOutcome.Placed].Select(sorted =>
                     (sorted.Entry.Transaction.Text, sorted.Entry.Transaction.Paid, LineName.Of(sorting.RuleOf(sorted)))).Distinct())
            foreach (var word in payees.Of(text))
            {
                if (!placed.TryGetValue((word, paid), out var shared))
                    placed[(word, paid)] = shared = new Shared();
                shared.Lines.Add(name);
                shared.IsEnd &= payees.IsEnd(word, text);
            }

        return placed;
    }

    /// <summary>The lines of the draft that the texts with a word were placed in, and whether it ends all of them.</summary>
    private sealed class Shared
    {
        public HashSet<LineName> Lines { get; } = [];

        public bool IsEnd { get; set; } = true;
    }
}
