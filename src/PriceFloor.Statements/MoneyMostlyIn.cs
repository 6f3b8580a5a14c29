namespace PriceFloor.Statements;

/// <summary>
/// A sheet with signed amounts of which nearly all came in, although the rules know their texts as costs: a card that counts purchases as positive.
/// </summary>
/// <param name="File">The number of the file, from 0.</param>
/// <param name="In">Its lines that came in.</param>
/// <param name="Lines">All its lines.</param>
/// <param name="Costs">The lines that came in and would be costs if they had gone out.</param>
public sealed record MoneyMostlyIn(int File, int In, int Lines, int Costs)
{
    /// <summary>Fewer may be refunds.</summary>
    private const int LeastCosts = 3;

    /// <summary>Unplaced lines of a file that are tried the other way round; enough to tell, and few enough to take no time.</summary>
    private const int MostTried = 100;

    /// <summary>Files in order. An account without any money that went out is <see cref="Sorting.OnlyMoneyIn"/> instead.</summary>
    internal static IEnumerable<MoneyMostlyIn> Of(Sorting sorting, IReadOnlyList<StatementFile> files, PatternTime time) =>
        from file in sorting.All.Where(line => files[line.Entry.File].IsSigned && !line.Entry.IsCash).GroupBy(line => line.Entry.File)
        let lines = file.ToList()
        let moneyIn = lines.Count(line => line.Entry.Amount > 0)
        where moneyIn * 4 >= lines.Count * 3 && lines.Exists(line => !sorting.OnlyMoneyIn.Contains(line.Entry.Account))
        let costs = CostsIn(sorting, lines, time)
        where costs >= LeastCosts
        select new MoneyMostlyIn(file.Key, moneyIn, lines.Count, costs);

    /// <summary>0 if more costs went out, or more of what came in is income: then the signs are right and these are refunds.</summary>
    private static int CostsIn(Sorting sorting, List<Sorted> lines, PatternTime time)
    {
        var placed = lines.Where(line => line.Outcome == LineOutcome.Placed).ToLookup(line => (IsCost(sorting.RuleOf(line)), line.Entry.Amount > 0));
        var costs = placed[(true, true)].Count() + lines
            .Where(line => line.Outcome == LineOutcome.Unplaced && line.Entry.Amount > 0).Take(MostTried)
            .Count(line => WouldCost(sorting.Rules, line.Entry.Transaction, time));
        return costs > placed[(true, false)].Count() && costs > placed[(false, true)].Count() ? costs : 0;
    }

    /// <summary>Whether a line that no rule took would be a cost if it had gone out. A pattern that is too slow for this hint gives none.</summary>
    private static bool WouldCost(ReadyRules rules, Transaction transaction, PatternTime time)
    {
        try
        {
            return rules.FirstFor(transaction with { Amount = -transaction.Amount }, time) is { } rule && IsCost(rules.Document.Rules[rule]);
        }
        catch (SlowPatternException)
        {
            return false;
        }
    }

    private static bool IsCost(ReadingRule rule) => rule.To is Placement.Business or Placement.Household;
}
