using System.Globalization;

namespace PriceFloor.Statements;

/// <summary>A cost profile drafted from statements, and the lines that it was made of.</summary>
public sealed class ProfileDraft
{
    /// <summary>No bank knows these: the maker must correct them. Common practice, without a source.</summary>
    private static readonly StudioCalendar s_assumedCalendar = new() { WeeksPerYear = 48, DaysPerWeek = 5, HoursPerDay = 8 };

    private ProfileDraft(Sorting sorting, DraftChoices choices)
    {
        Sorting = sorting;
        var (lines, bought) = (new List<DraftLine>(), new List<CapitalPurchase>());
        foreach (var line in sorting.Of[LineOutcome.Placed].GroupBy(sorted => LineName.Of(sorting.RuleOf(sorted))))
        {
            var lasting = CapitalPurchase.In(line.Key, [.. line], choices.EquipmentFrom).ToList();
            bought.AddRange(lasting);
            var rest = line.Where(sorted => !lasting.Exists(one => ReferenceEquals(one.Entry, sorted))).ToList();
            if (rest.Count > 0)
                lines.Add(new DraftLine(line.Key, rest, sorting.Coverage));
        }

        Lines =
            [.. lines.OrderBy(line => line.Name.To).ThenByDescending(line => line.PerYear).ThenBy(line => line.Name.Name, StringComparer.Ordinal)];
        Bought = [.. bought.OrderByDescending(one => one.Cost)];
        Profile = ProfileOf(choices);
    }

    public Sorting Sorting { get; }

    /// <summary>The lines, largest first in each group.</summary>
    public IReadOnlyList<DraftLine> Lines { get; }

    /// <summary>Purchases offered as equipment.</summary>
    public IReadOnlyList<CapitalPurchase> Bought { get; }

    /// <summary>The draft: a complete document, to be stored as it is or after changes.</summary>
    public CostProfile Profile { get; }

    /// <summary>Drafts a profile.</summary>
    public static ProfileDraft Of(Sorting sorting, DraftChoices choices) => new(sorting, choices);

    /// <summary>Lines where more came back than was paid: they have no place in a profile.</summary>
    public IEnumerable<DraftLine> PaidBack => Lines.Where(line => IsInProfile(line) && line.PerYear < 0);

    /// <summary>Places of drafted income without a number of days that it takes from the bench; no bank knows that number.</summary>
    /// <param name="against">The profile to compare with, which may have the number.</param>
    public IEnumerable<int> IncomeWithoutDays(CostProfile? against) => Profile.OtherIncome.Index()
        .Where(income => income.Item.DaysPerYear == 0 && against?.OtherIncome.Any(known => known.Name == income.Item.Name) != true)
        .Select(income => income.Index);

    /// <summary>
    /// Places of drafted expenses that are traced to nothing although others of their kind or name are traced, each with one of these.
    /// </summary>
    public IEnumerable<(int Index, Expense Traced)> TracedAndNot()
    {
        foreach (var (index, expense) in Profile.Expenses.Index().Where(one => one.Item.TracedTo is null))
            if (Profile.Expenses.FirstOrDefault(other => other.TracedTo is not null && IsAlike(other, expense)) is { } traced)
                yield return (index, traced);

        static bool IsAlike(Expense one, Expense other) => (one.CostKind is not null && one.CostKind == other.CostKind)
            || string.Equals(one.Name, other.Name, StringComparison.OrdinalIgnoreCase);
    }

    private static bool IsInProfile(DraftLine line) => line.Name.To is Placement.Business or Placement.Household or Placement.OtherIncome;

    private CostProfile ProfileOf(DraftChoices choices)
    {
        var stored = choices.Against;
        var yearStart = choices.YearStart ?? stored?.YearStart ?? FirstMonth();
        var basis = stored ?? new CostProfile
        {
            Name = NameOf(yearStart),
            Currency = Sorting.Currency.Code,
            Calendar = s_assumedCalendar,
            DraftedFrom = DraftSource.Statements,
        };
        var counted = Lines.Where(line => IsInProfile(line) && Yearly(line.PerYear) > 0).ToList();
        return basis with
        {
            YearStart = yearStart,
            Expenses =
                [.. counted.Where(line => line.Name is { To: Placement.Business, BusinessShare: > 0 }).Select(line => ExpenseOf(line, stored))],
            Household = [.. counted.Where(line => line.Name.To == Placement.Household).Select(HouseholdOf),
                .. counted.Where(line => line.Name is { To: Placement.Business, BusinessShare: < 1 }).Select(PrivatePartOf)],
            OtherIncome = [.. counted.Where(line => line.Name.To == Placement.OtherIncome).Select(line => IncomeOf(line, stored))],
            Equipment = [.. basis.Equipment,
                .. Bought.Select(one => one.AsEquipment(choices.LifeYears)).Where(one => !basis.Equipment.Any(known => IsSame(known, one)))],
        };
    }

    /// <summary>What a maker would call the year: 2026, or 2026/27 if it does not begin in January.</summary>
    private static string NameOf(DateOnly? start) => start is not { } first ? "Drafted from statements"
        : string.Create(CultureInfo.InvariantCulture,
            $"Year {first.Year}{(first is { Month: 1, Day: 1 } ? "" : $"/{(first.Year + 1) % 100:00}")}");

    private DateOnly? FirstMonth() => Sorting.Covers is not { } covers ? null
        : new DateOnly(covers.To.Year, covers.To.Month, 1).AddMonths(-11) is var earliest && covers.From > earliest
            ? new DateOnly(covers.From.Year, covers.From.Month, 1)
        : earliest;

    private Expense ExpenseOf(DraftLine line, CostProfile? stored)
    {
        var known = stored?.Expenses.FirstOrDefault(expense => expense.Name == line.Name.Name);
        return new Expense
        {
            Name = line.Name.Name,
            Amount = Yearly(line.PerYear * line.Name.BusinessShare),
            Per = Per.Year,
            CostKind = line.Name.CostKind ?? known?.CostKind,
            TracedTo = line.Name.TracedTo ?? known?.TracedTo,
            Deductible = known?.Deductible ?? true,
        };
    }

    private HouseholdLine HouseholdOf(DraftLine line) => new()
    {
        Name = line.Name.Name,
        Amount = Yearly(line.PerYear),
        Per = Per.Year,
        BusinessShare = line.Name.BusinessShare,
        CostKind = line.Name.BusinessShare > 0 ? line.Name.CostKind : null,
    };

    private HouseholdLine PrivatePartOf(DraftLine line) =>
        new()
        {
            Name = line.Name.Short + ", the private part",
            Amount = Yearly(line.PerYear) - Yearly(line.PerYear * line.Name.BusinessShare),
            Per = Per.Year,
        };

    private OtherIncome IncomeOf(DraftLine line, CostProfile? stored)
    {
        var known = stored?.OtherIncome.FirstOrDefault(income => income.Name == line.Name.Name);
        return new OtherIncome
        {
            Name = line.Name.Name,
            Amount = Yearly(line.PerYear),
            Per = Per.Year,
            Kind = line.Name.IncomeKind ?? known?.Kind ?? IncomeKind.Taxable,
            DaysPerYear = known?.DaysPerYear ?? 0,
        };
    }

    private decimal Yearly(decimal amount) => Sorting.Currency.Round(amount);

    private static bool IsSame(Equipment known, Equipment bought) =>
        known.Cost == bought.Cost && known.InService is { } since && since.Year == bought.InService!.Value.Year
        && since.Month == bought.InService.Value.Month;
}

/// <summary>The parts of the draft that do not come from the statements.</summary>
/// <param name="Against">The stored profile: it supplies calendar, tax, materials and everything else that no bank knows.</param>
/// <param name="YearStart">The first day of the drafted year; if null, the stored profile's, else the first month covered, at most twelve months
/// back.</param>
/// <param name="EquipmentFrom">A purchase of at least this amount may be equipment.</param>
/// <param name="LifeYears">The life of equipment.</param>
public sealed record DraftChoices(CostProfile? Against, DateOnly? YearStart, decimal EquipmentFrom, decimal LifeYears);
