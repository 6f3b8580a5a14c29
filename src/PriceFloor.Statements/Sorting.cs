namespace PriceFloor.Statements;

/// <summary>All the lines of the files, each with its outcome, and the days that the files cover.</summary>
public sealed class Sorting
{
    private Sorting(ReadyRules rules, Currency currency, IReadOnlyList<Sorted> all, IReadOnlyList<Coverage> coverage, Duplicates duplicates)
    {
        (Rules, Currency, All, Coverage, Duplicates) = (rules, currency, all, coverage, duplicates);
        Of = all.ToLookup(sorted => sorted.Outcome);
        OnlyMoneyIn = all.Where(sorted => !sorted.Entry.IsCash).GroupBy(sorted => sorted.Entry.Account)
            .Where(account => account.All(sorted => sorted.Entry.Amount > 0)).Select(account => account.Key).ToHashSet();
    }

    public ReadyRules Rules { get; }

    public Currency Currency { get; }

    /// <summary>Every transaction that was read, once, in the order of the files.</summary>
    public IReadOnlyList<Sorted> All { get; }

    public ILookup<LineOutcome, Sorted> Of { get; }

    /// <summary>The days that the files cover, by account.</summary>
    public IReadOnlyList<Coverage> Coverage { get; }

    public Duplicates Duplicates { get; }

    /// <summary>The first and the last day that any account covers; null if there is none.</summary>
    public Period? Covers => Coverage.Where(account => account.Covered.Count > 0).ToList() is { Count: > 0 } covered
        ? new Period(covered.Min(account => account.Covered[0].From), covered.Max(account => account.Covered[^1].To))
        : null;

    /// <summary>The accounts that have lines, but none of money that went out.</summary>
    public IReadOnlySet<string> OnlyMoneyIn { get; }

    /// <summary>The files whose signs seem to be turned round.</summary>
    public IReadOnlyList<MoneyMostlyIn> MostlyIn { get; private set; } = [];

    /// <summary>The rule that took a placed entry, or what a line of a cash book says itself.</summary>
    public ReadingRule RuleOf(Sorted sorted)
    {
        var rule = sorted.Entry.Transaction.Says ?? Rules.Document.Rules[sorted.Rule!.Value];
        return rule.To != Placement.Cash ? rule
            : rule with { To = sorted.Entry.Amount > 0 ? Placement.Sale : Placement.Household, Name = rule.Name ?? "Cash" };
    }

    /// <summary>The placed entries whose rule has this destination.</summary>
    public IEnumerable<Sorted> PlacedTo(Placement to) => Of[LineOutcome.Placed].Where(sorted => RuleOf(sorted).To == to);

    /// <param name="files">The files that were read.</param>
    /// <param name="rules">The rules to sort by.</param>
    /// <param name="currency">The one currency of the draft; also that of files without one.</param>
    /// <param name="asked">The requested days; null for all that the files have.</param>
    /// <param name="time">The time for the rules' patterns; when it is up, a <see cref="SlowPatternException"/> names the slowest.</param>
    /// <param name="cancel">Cancels it.</param>
    public static Sorting Sort(IReadOnlyList<StatementFile> files, ReadyRules rules, Currency currency, Period? asked, PatternTime time,
        CancellationToken cancel)
    {
        var entries = files.Index().SelectMany(file => file.Item.Statements.SelectMany(statement =>
            statement.Transactions.Select(transaction =>
                new Entry(file.Index, statement.Account, transaction) { IsCash = statement.IsCashBook }))).ToList();
        var duplicates = new Duplicates();
        var hasCashBook = files.Any(file => file.Statements.Any(statement => statement.IsCashBook));
        var sorted = entries.ConvertAll(entry =>
        {
            cancel.ThrowIfCancellationRequested();
            var first = First(entry, rules, currency, asked, duplicates, time);
            return hasCashBook && first is { Outcome: LineOutcome.Placed, Rule: { } rule } && rules.Document.Rules[rule].To == Placement.Cash
                ? first with { Outcome = LineOutcome.OwnAccount }
                : first;
        });
        PairTransfers(sorted);
        var sorting = new Sorting(rules, currency, sorted, CoverageOf(files, asked), duplicates);
        sorting.MostlyIn = [.. MoneyMostlyIn.Of(sorting, files, time)];
        return sorting;
    }

    private static Sorted First(Entry entry, ReadyRules rules, Currency currency, Period? asked, Duplicates duplicates, PatternTime time)
    {
        if (entry.Transaction.Currency is { } code && code != currency.Code)
            return new Sorted(entry, LineOutcome.ForeignCurrency, null);
        if (asked is { } period && !period.Holds(entry.Date))
            return new Sorted(entry, LineOutcome.OutsidePeriod, null);
        if (duplicates.Has(entry))
            return new Sorted(entry, LineOutcome.Duplicate, null);
        if (entry.Transaction.Says is { } says)
            return new Sorted(entry, OutcomeOf(says.To == Placement.Cash ? Placement.OwnAccount : says.To), null);
        if (rules.FirstFor(entry.Transaction, time) is not { } rule)
            return new Sorted(entry, LineOutcome.Unplaced, null);
        return new Sorted(entry, OutcomeOf(rules.Document.Rules[rule].To), rule);
    }

    private static LineOutcome OutcomeOf(Placement to) => to switch
    {
        Placement.OwnAccount => LineOutcome.OwnAccount,
        Placement.LeaveOut => LineOutcome.LeftOut,
        _ => LineOutcome.Placed,
    };

    private static void PairTransfers(List<Sorted> sorted)
    {
        var places = Enumerable.Range(0, sorted.Count)
            .Where(index => sorted[index].Outcome is LineOutcome.Unplaced or LineOutcome.OwnAccount).ToList();
        foreach (var place in OwnTransfers.In(places.ConvertAll(index => sorted[index].Entry)).Select(index => places[index]))
            sorted[place] = sorted[place] with { Outcome = LineOutcome.Paired };
    }

    private static List<Coverage> CoverageOf(IReadOnlyList<StatementFile> files, Period? asked)
    {
        var statements = files.SelectMany(file => file.Statements).ToList();
        var banks = statements.Where(statement => !statement.IsCashBook).Select(PeriodOf).OfType<Period>().ToList();
        var covered = banks.Count == 0 ? (Period?)null : new Period(banks.Min(period => period.From), banks.Max(period => period.To));
        return [.. statements.Select(statement => statement.IsCashBook ? statement with { From = covered?.From, To = covered?.To } : statement)
            .GroupBy(statement => statement.Account)
            .Select(account => new Coverage(account.Key, [.. account.Select(statement => CoveredBy(statement, asked)).OfType<Covered>()]))];
    }

    private static Covered? CoveredBy(AccountStatement statement, Period? asked)
    {
        if (PeriodOf(statement) is not { } period || Within(period, asked) is not { } covered)
            return null;
        var says = statement is { From: not null, To: not null } || statement.Transactions.Count == 0;
        var certain = says ? period
            : new Period(statement.Transactions.Min(transaction => transaction.Date), statement.Transactions.Max(transaction => transaction.Date));
        return new Covered(covered, Within(certain, asked) ?? covered);
    }

    private static Period? Within(Period period, Period? asked) => asked is { } wanted ? period.Shared(wanted) : period;

    /// <summary>
    /// The file's own period, extended to all its lines; a sheet has no period and covers the whole months that it has lines of.
    /// </summary>
    public static Period? PeriodOf(AccountStatement statement)
    {
        if (statement.Transactions.Count == 0)
            return statement is { From: { } from, To: { } to } && from <= to ? new Period(from, to) : null;
        var (first, last) = (statement.Transactions.Min(transaction => transaction.Date),
            statement.Transactions.Max(transaction => transaction.Date));
        var whole = Period.WholeMonths(first, last);
        var (starts, ends) = (statement.From ?? whole.From, statement.To ?? whole.To);
        return new Period(starts < first ? starts : first, ends > last ? ends : last);
    }
}
