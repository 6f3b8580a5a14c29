namespace PriceFloor.Statements;

/// <summary>The entries of one line, and their amount for a year.</summary>
public sealed class DraftLine
{
    /// <summary>With fewer covered months than this, a line paid in one month may as well be monthly.</summary>
    private const int TooFewMonths = 3;

    /// <summary>Two payments half a year or a quarter apart are one bill only if the amounts are this close. Our own choice.</summary>
    private const decimal Alike = 0.2m;

    /// <summary>Kinds of cost that are billed by the year more often than by the month. Common practice, without a source.</summary>
    private static readonly CostKind[] s_billedYearly = [Pricing.Documents.CostKind.Insurance, Pricing.Documents.CostKind.TaxesAndLicences,
        Pricing.Documents.CostKind.ProfessionalServices, Pricing.Documents.CostKind.Training];

    public DraftLine(LineName name, IReadOnlyList<Sorted> entries, IReadOnlyList<Coverage> coverage)
    {
        (Name, Entries) = (name, entries);
        var isIncome = name.To is Placement.OtherIncome or Placement.Sale;
        Amounts = [.. entries.Select(sorted => isIncome ? sorted.Entry.Amount : -sorted.Entry.Amount)];
        Total = Amounts.Sum();
        Back = -Amounts.Where(amount => amount < 0).Sum();
        var months = coverage.ToDictionary(account => account.Account);
        (Reckoned, TimesAYear) = Rhythm(entries.Select(sorted => months[sorted.Entry.Account]).Distinct().ToList());
        PerYear = Reckoned switch
        {
            Reckoned.OnceAYear => Total,
            Reckoned.ByInterval => Total / PaymentsAt(TimesAYear!.Value) * TimesAYear.Value,
            _ => entries.Zip(Amounts).GroupBy(pair => pair.First.Entry.Account)
                .Sum(account => account.Sum(pair => pair.Second) * 12 / months[account.Key].Months),
        };
    }

    public LineName Name { get; }

    public IReadOnlyList<Sorted> Entries { get; }

    /// <summary>Each entry with the sign of its line: costs above zero, refunds below; for income the other way round.</summary>
    public IReadOnlyList<decimal> Amounts { get; }

    /// <summary>The total in the files, less refunds.</summary>
    public decimal Total { get; }

    /// <summary>Refunds that were deducted.</summary>
    public decimal Back { get; }

    /// <summary>The amount for a year; negative if more came back than was paid.</summary>
    public decimal PerYear { get; }

    public Reckoned Reckoned { get; }

    /// <summary>With <see cref="Reckoned.ByInterval"/>: the number of payments a year.</summary>
    public int? TimesAYear { get; }

    public DateOnly First => Entries.Min(sorted => sorted.Entry.Date);

    public DateOnly Last => Entries.Max(sorted => sorted.Entry.Date);

    private (Reckoned, int?) Rhythm(List<Coverage> coverage)
    {
        if (coverage.TrueForAll(account => account.IsWholeYear))
            return (Reckoned.WholeYear, null);
        if ((Name.TimesAYear ?? Instalments.AYear(Entries)) is { } times && PaymentsAt(times) > 0)
            return (Reckoned.ByInterval, times);
        var (paid, covered) = (PaidMonths(), coverage.Max(account => account.Months));
        if (paid.Count == 1 && (covered >= TooFewMonths || (Name.CostKind is { } costKind && s_billedYearly.Contains(costKind))))
            return (Reckoned.OnceAYear, null);
        return Interval(paid) is { } interval ? (Reckoned.ByInterval, 12 / interval)
            : Instalments.RestsTwoMonths(paid, Alike) ? (Reckoned.ByInterval, 10)
            : (Reckoned.ByMonths, null);
    }

    /// <summary>The payments in the files: the months with one, or the days if there may be more than one a month.</summary>
    private int PaymentsAt(int timesAYear) => timesAYear <= 12 ? PaidMonths().Count
        : Entries.Zip(Amounts).Where(pair => pair.Second > 0).Select(pair => pair.First.Entry.Date).Distinct().Count();

    /// <summary>The regular interval in months between payments: 2, 3 or 6; null if there is none.</summary>
    private static int? Interval(IReadOnlyList<(int Month, decimal Amount)> paid)
    {
        if (paid.Count < 2)
            return null;
        var distance = paid[1].Month - paid[0].Month;
        var isEven = paid.Zip(paid.Skip(1)).All(pair => pair.Second.Month - pair.First.Month == distance);
        var areAlike = paid.Max(month => month.Amount) - paid.Min(month => month.Amount) <= Alike * paid.Max(month => month.Amount);
        return distance is 2 or 3 or 6 && isEven && (paid.Count > 2 || (areAlike && distance > 2)) ? distance : null;
    }

    /// <summary>The months with payments, counted from year 0, with the amounts.</summary>
    private List<(int Month, decimal Amount)> PaidMonths() =>
        [.. Entries.Zip(Amounts).Where(pair => pair.Second > 0).GroupBy(pair => pair.First.Entry.Date.Year * 12 + pair.First.Entry.Date.Month)
            .Select(month => (month.Key, month.Sum(pair => pair.Second))).OrderBy(month => month.Key)];
}

/// <summary>How a line's year was calculated from the months that the files cover.</summary>
public enum Reckoned
{
    /// <summary>The files cover the whole year or more: twelve months of it.</summary>
    WholeYear,

    /// <summary>The total divided by the months covered, times twelve.</summary>
    ByMonths,

    /// <summary>Paid regularly every 2, 3 or 6 months, or in instalments: a payment multiplied by the times in a year.</summary>
    ByInterval,

    /// <summary>Paid in one month only, like a yearly bill: once a year.</summary>
    OnceAYear,
}
