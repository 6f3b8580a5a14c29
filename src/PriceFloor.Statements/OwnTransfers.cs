namespace PriceFloor.Statements;

/// <summary>
/// Pairs money that left one of the accounts with money that reached another: the same amount, at most five days apart, and no rule that says
/// otherwise.
/// </summary>
public static class OwnTransfers
{
    /// <summary>A transfer between two accounts takes up to a long weekend. Common practice, without a source.</summary>
    private const int MostDays = 5;

    /// <summary>The entries, each half of a pair, by their places in the list.</summary>
    public static HashSet<int> In(IReadOnlyList<Entry> candidates)
    {
        var paired = new HashSet<int>();
        foreach (var sameAmount in Enumerable.Range(0, candidates.Count).GroupBy(index => decimal.Abs(candidates[index].Amount)))
        {
            var arrivals = sameAmount.Where(index => candidates[index].Amount > 0).GroupBy(index => candidates[index].Account)
                .ToDictionary(account => account.Key, account => new Queue<int>(account.OrderBy(index => candidates[index].Date)));
            if (arrivals.Count > 0)
                foreach (var left in sameAmount.Where(index => candidates[index].Amount < 0).OrderBy(index => candidates[index].Date))
                    if (Nearest(candidates[left], arrivals, candidates) is { } queue)
                        paired.UnionWith([left, queue.Dequeue()]);
        }

        return paired;
    }

    /// <summary>The account whose next arrival is nearest. What arrived too early for this one is too early for all that follow.</summary>
    private static Queue<int>? Nearest(Entry left, Dictionary<string, Queue<int>> arrivals, IReadOnlyList<Entry> candidates)
    {
        var (nearest, least) = ((Queue<int>?)null, MostDays + 1);
        foreach (var (account, queue) in arrivals)
        {
            while (queue.TryPeek(out var early) && candidates[early].Date < left.Date.AddDays(-MostDays))
                queue.Dequeue();
            if (account == left.Account || !queue.TryPeek(out var next))
                continue;
            var days = candidates[next].Date.DayNumber - left.Date.DayNumber;
            if (days < 0)
                days = -days;
            if (days < least)
                (nearest, least) = (queue, days);
        }

        return nearest;
    }
}
