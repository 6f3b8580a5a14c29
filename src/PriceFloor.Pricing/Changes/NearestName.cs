namespace PriceFloor.Pricing.Changes;

/// <summary>Finds what a mistyped name probably means.</summary>
public static class NearestName
{
    private const int Shown = 12;

    /// <summary>
    /// The known name that differs only in case, or else by the fewest letters that are changed, missing, extra or swapped with their neighbour; null
    /// if more than a third of the name would differ. Of equals the first.
    /// </summary>
    public static string? Of(string name, IEnumerable<string> known)
    {
        var (best, least) = ((string?)null, int.Max(1, name.Length / 3) + 1);
        foreach (var one in known)
        {
            if (string.Equals(one, name, StringComparison.OrdinalIgnoreCase))
                return one;
            if (int.Abs(one.Length - name.Length) < least && Distance(name, one) is var distance && distance < least)
                (best, least) = (one, distance);
        }

        return best;
    }

    /// <summary>What follows a sentence that says a name is unknown: the nearest known one, or else those that there are, if they are few.</summary>
    /// <param name="name">The unknown name.</param>
    /// <param name="known">Every known one, in order.</param>
    public static string Hint(string name, IReadOnlyCollection<string> known) =>
        Of(name, known) is { } near ? $", but there is \"{near}\""
        : known.Count is > 0 and <= Shown ? $"; there {(known.Count == 1 ? "is" : "are")} {string.Join(", ", known)}"
        : "";

    /// <summary>Optimal string alignment distance, regardless of case.</summary>
    private static int Distance(string a, string b)
    {
        var rows = new int[3][];
        for (var i = 0; i < 3; i++)
            rows[i] = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
            rows[0][j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            var (row, above, beyond) = (rows[i % 3], rows[(i - 1) % 3], rows[(i + 1) % 3]);
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var same = Lower(a[i - 1]) == Lower(b[j - 1]);
                row[j] = int.Min(int.Min(row[j - 1], above[j]) + 1, above[j - 1] + (same ? 0 : 1));
                if (i > 1 && j > 1 && Lower(a[i - 1]) == Lower(b[j - 2]) && Lower(a[i - 2]) == Lower(b[j - 1]))
                    row[j] = int.Min(row[j], beyond[j - 2] + 1);
            }
        }

        return rows[a.Length % 3][b.Length];

        static char Lower(char letter) => char.ToLowerInvariant(letter);
    }
}
