using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Documents;

/// <summary>The rules between the fields of a cost profile. What is sent and what is read from the store are held to the same ones.</summary>
public static class ProfileRules
{
    /// <summary>Every rule that the document breaks. Missing required fields are reported elsewhere.</summary>
    public static IEnumerable<Fault> Faults(CostProfile profile) =>
    [
        .. CurrencyRule.Faults(profile.Currency),
        .. CalendarFaults(profile.Calendar),
        .. EachOf(profile.Expenses, "/expenses", RecurringFaults),
        .. EachOf(profile.Household, "/household", RecurringFaults),
        .. EachOf(profile.OtherIncome, "/otherIncome", RecurringFaults),
        .. EachOf(profile.Equipment, "/equipment", EquipmentFaults),
        .. Unique([.. profile.Materials.Select(line => line.Material)], "/materials", "material"),
        .. Unique([.. profile.Limits.Select(line => line.Name)], "/limits", "name"),
        .. TaxFaults(profile.Tax).Select(fault => fault with { Pointer = "/tax" + fault.Pointer }),
    ];

    /// <summary>True if tax can be computed by these rules: each levy's bands rise and only the last is open.</summary>
    public static bool AreInOrder(TaxRules tax) =>
        tax.Levies.All(levy => !BandFaults(levy).Any()) && (tax.Kind != TaxKind.Flat || tax.Rate is not null);

    private static IEnumerable<Fault> EachOf<T>(IReadOnlyList<T> lines, string at, Func<T, IEnumerable<Fault>> faults) =>
        lines.SelectMany((line, i) =>
            faults(line).Select(fault => fault with { Pointer = FormattableString.Invariant($"{at}/{i}{fault.Pointer}") }));

    private static IEnumerable<Fault> CalendarFaults(StudioCalendar? calendar)
    {
        if (calendar is not null && calendar.BenchShare + calendar.SellingShare > 1)
            yield return new("/calendar/sellingShare", FaultCodes.OutOfRange,
                "benchShare and sellingShare are parts of one working day: together at most 1. Lower one of them.");
    }

    /// <summary><c>times</c> goes with <c>per</c> "time" and with nothing else.</summary>
    private static IEnumerable<Fault> RecurringFaults(IRecurring line)
    {
        if (line.Per == Per.Time && line.Times is null)
            yield return new("/times", FaultCodes.Required, "With per \"time\", times says how many times a year.");
        if (line.Per != Per.Time && line.Times is not null)
            yield return new("/times", FaultCodes.Unexpected, "times is only for per \"time\"; leave it out or change per.");
    }

    private static IEnumerable<Fault> EquipmentFaults(Equipment thing)
    {
        if (thing.Salvage > thing.Cost)
            yield return new("/salvage", FaultCodes.OutOfRange, "salvage can be at most cost.");
        if (thing.Depreciation is not { } rule)
            yield break;
        foreach (var fault in NeedsOf(rule))
            yield return fault;
        if (rule.LifeYears * 12 % 1 is not (null or 0))
            yield return new("/depreciation/lifeYears", FaultCodes.OutOfRange,
                "lifeYears must be whole months: twelve times it is a whole number, such as 7.5.");
        if (rule.Percentages?.Sum() > 1)
            yield return new("/depreciation/percentages", FaultCodes.OutOfRange,
                "percentages are fractions that add up to at most 1, such as 0.2, 0.32, 0.192.");
    }

    /// <summary>Each method of depreciation needs its own figure.</summary>
    private static IEnumerable<Fault> NeedsOf(DepreciationRule rule)
    {
        (string Field, string Method, bool IsMethod, bool IsGiven)[] needs =
        [
            ("lifeYears", "straight-line", rule.Method == DepreciationMethod.StraightLine, rule.LifeYears is not null),
            ("rate", "declining-balance", rule.Method == DepreciationMethod.DecliningBalance, rule.Rate is not null),
            ("percentages", "percentages", rule.Method == DepreciationMethod.Percentages, rule.Percentages is { Count: > 0 }),
        ];
        foreach (var (field, method, isMethod, isGiven) in needs)
        {
            if (isMethod && !isGiven)
                yield return new("/depreciation/" + field, FaultCodes.Required, $"The method {method} needs {field}.");
            if (!isMethod && isGiven)
                yield return new("/depreciation/" + field, FaultCodes.Unexpected,
                    $"{field} is only for the method {method}; leave it out or change the method.");
        }
    }

    private static IEnumerable<Fault> Unique(IReadOnlyList<string> names, string at, string field)
    {
        var before = new HashSet<string>();
        for (var i = 0; i < names.Count; i++)
            if (names[i] is { } name && !before.Add(name))
                yield return new(FormattableString.Invariant($"{at}/{i}/{field}"), FaultCodes.Duplicate,
                    $"\"{name}\" stands in the list already; leave one out or give it another name.");
    }

    /// <summary>Each kind of tax rules needs its own figures.</summary>
    private static IEnumerable<Fault> TaxFaults(TaxRules tax)
    {
        if (tax.Kind == TaxKind.Flat && tax.Rate is null)
            yield return new("/rate", FaultCodes.Required, "A flat tax needs its rate.");
        if (tax.Kind != TaxKind.Flat && tax.Rate is not null)
            yield return new("/rate", FaultCodes.Unexpected, "rate is only for kind \"flat\"; leave it out or change kind.");
        if (tax.Kind == TaxKind.Levies && tax.Levies.Count == 0)
            yield return new("/levies", FaultCodes.Required, "Tax by levies needs at least one levy.");
        if (tax.Kind != TaxKind.Levies && tax.Levies.Count > 0)
            yield return new("/levies", FaultCodes.Unexpected, "levies are only for kind \"levies\"; leave them out or change kind.");
        foreach (var fault in EachOf(tax.Levies, "/levies", BandFaults))
            yield return fault;
    }

    private static IEnumerable<Fault> BandFaults(Levy levy)
    {
        var bands = levy.Bands ?? [];
        if (bands.Count == 0)
            yield return new("/bands", FaultCodes.Required, "A levy needs at least one band; a single rate is one band without upTo.");
        for (var i = 0; i < bands.Count; i++)
        {
            var at = FormattableString.Invariant($"/bands/{i}/upTo");
            if (bands[i].UpTo is null && i < bands.Count - 1)
                yield return new(at, FaultCodes.Required, "Only the last band has no upTo; say where this one ends.");
            if (bands[i].UpTo is not null && i == bands.Count - 1)
                yield return new(at, FaultCodes.Unexpected,
                    "The last band has no upTo, so that every profit has a rate; leave it out or add a last band.");
            if (i > 0 && bands[i].UpTo <= bands[i - 1].UpTo)
                yield return new(at, FaultCodes.OutOfOrder, "Bands go from low to high: this upTo must be above the one before.");
        }
    }
}

/// <summary>A currency is an ISO 4217 code of money that is spent.</summary>
internal static class CurrencyRule
{
    public static IEnumerable<Fault> Faults(string? code) => code is null || Currency.Find(code) is not null ? []
        : [new("/currency", FaultCodes.UnknownCurrency, "currency must be an ISO 4217 code of money that is spent, in capitals, such as USD.")];
}
