namespace PriceFloor.Statements;

/// <summary>Similar lines that no rule took, and where similar lines were placed.</summary>
/// <param name="Text">The text of the newest of them.</param>
/// <param name="Paid">In or out.</param>
/// <param name="Entries">The lines.</param>
/// <param name="Suggested">Where the most similar lines were placed; null if none is similar.</param>
/// <param name="Because">The word that they share.</param>
public sealed record Unplaced(string Text, Paid Paid, IReadOnlyList<Sorted> Entries, LineName? Suggested, string? Because)
{
    /// <summary>What all the texts have in common, so that a rule with it as textHas takes all of them; null if there is nothing.</summary>
    public string? Common { get; } = CommonText.Of(Entries.Select(sorted => sorted.Entry.Transaction.Text));

    /// <summary>A pattern that matches all the texts, if they have only their words in common and not what is between them.</summary>
    public string? Pattern => Common is null ? CommonText.PatternOf(Text) : null;

    public decimal Total => Entries.Sum(sorted => decimal.Abs(sorted.Entry.Amount));

    /// <summary>Largest first.</summary>
    public static IReadOnlyList<Unplaced> In(Sorting sorting)
    {
        var placed = PlacedByWord(sorting);
        return [.. sorting.Of[LineOutcome.Unplaced]
            .GroupBy(sorted => (Words.PayeeKey(sorted.Entry.Transaction.Text), sorted.Entry.Transaction.Paid))
            .Select(alike => GroupOf(alike.Key.Paid, [.. alike], placed))
            .OrderByDescending(group => group.Total).ThenBy(group => group.Text, StringComparer.Ordinal)];
    }

    private static Unplaced GroupOf(Paid paid, IReadOnlyList<Sorted> entries, Dictionary<(string, Paid), HashSet<LineName>> placed)
    {
        var text = entries.MaxBy(sorted => sorted.Entry.Date)!.Entry.Transaction.Text;
        // The rarest shared word says most: one that leads to a single line, rather than "card" or "payment", which lead to many.
        var best = Words.PayeeWords(text).Where(word => placed.ContainsKey((word, paid))).OrderBy(word => placed[(word, paid)].Count)
            .ThenByDescending(word => word.Length).FirstOrDefault();
        return best is not null && placed[(best, paid)] is { Count: 1 } lines
            ? new Unplaced(text, paid, entries, lines.First(), best)
            : new Unplaced(text, paid, entries, null, null);
    }

    private static Dictionary<(string, Paid), HashSet<LineName>> PlacedByWord(Sorting sorting)
    {
        var placed = new Dictionary<(string, Paid), HashSet<LineName>>();
        foreach (var sorted in sorting.Of[LineOutcome.Placed])
            foreach (var word in Words.PayeeWords(sorted.Entry.Transaction.Text))
            {
                var key = (word, sorted.Entry.Transaction.Paid);
                if (!placed.TryGetValue(key, out var lines))
                    placed[key] = lines = [];
                lines.Add(LineName.Of(sorting.RuleOf(sorted)));
            }

        return placed;
    }
}
