using System.Globalization;

namespace PriceFloor.Statements.Tests;

/// <summary>Helpers to build statements.</summary>
internal static class Bank
{
    public static readonly Currency Usd = Currency.Of("USD");

    public static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static Transaction Line(string date, decimal amount, string text, string? id = null, string? currency = null) =>
        new() { Line = 1, Date = Day(date), Amount = amount, Text = text, BankId = id, Currency = currency };

    public static StatementFile File(string account, string? from, string? to, params Transaction[] lines) => new()
    {
        Format = StatementFormat.Csv,
        Statements = [new AccountStatement(account, from is null ? null : Day(from), to is null ? null : Day(to), lines)],
        Refused = [],
    };

    public static ReadingRule Rule(string textHas, Placement to, CostKind? costKind = null, Paid? paid = null) =>
        new() { TextHas = textHas, To = to, CostKind = costKind, Paid = paid };

    public static ReadyRules Rules(params ReadingRule[] rules) => ReadyRules.Of(new ReadingRules { Rules = rules });

    /// <summary>A clock that stands still.</summary>
    public static PatternTime Time => new(() => 0);

    public static Sorting Sort(ReadyRules rules, params StatementFile[] files) => Sorting.Sort(files, rules, Usd, null, Time, CancellationToken.None);

    public static ProfileDraft Draft(ReadyRules rules, params StatementFile[] files) =>
        ProfileDraft.Of(Sort(rules, files), new DraftChoices(null, null, 1000, 5));

    public static LineOutcome[] Outcomes(this Sorting sorting) => [.. sorting.All.Select(sorted => sorted.Outcome)];

    /// <summary>The same payment on the given day of each month of 2026.</summary>
    public static Transaction[] EachMonth(int from, int to, int day, decimal amount, string text) =>
        [.. Enumerable.Range(from, to - from + 1)
            .Select(month => Line(string.Create(CultureInfo.InvariantCulture, $"2026-{month:00}-{day:00}"), amount, text))];
}
