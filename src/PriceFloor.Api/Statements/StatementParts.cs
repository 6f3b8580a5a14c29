using System.Text.Json;
using System.Text.Json.Serialization;
using PriceFloor.Api.Http;
using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>How many lines, how much came in and how much went out.</summary>
/// <param name="Lines">Lines.</param>
/// <param name="In">What came in, in the currency of the answer.</param>
/// <param name="Out">What went out, as an amount above 0.</param>
public sealed record CountAnswer(int Lines, decimal In, decimal Out)
{
    public static CountAnswer Of(IEnumerable<Transaction> transactions, Currency money)
    {
        var count = Count.Of(transactions);
        return new CountAnswer(count.Lines, Exactly(count.In, money), Exactly(count.Out, money));
    }

    /// <summary>What the bank says, with at least the currency's decimals; nothing is rounded away.</summary>
    public static decimal Exactly(decimal amount, Currency money) => Rounding.WithDecimals(amount, money.Decimals);
}

/// <summary>One account in one file. The period is the file's own, or the whole months that its lines stand in.</summary>
/// <param name="Account">What the account is called.</param>
/// <param name="From">The first day of the statement; null where it has no lines and says no period.</param>
/// <param name="To">The last day of the statement.</param>
/// <param name="SaysPeriod">True where the file says its period itself; false where its lines show it.</param>
/// <param name="Count">Its lines.</param>
public sealed record FileAccountAnswer(string Account, DateOnly? From, DateOnly? To, bool SaysPeriod, CountAnswer Count)
{
    public static FileAccountAnswer Of(AccountStatement statement, Currency money)
    {
        var period = Sorting.PeriodOf(statement);
        return new(statement.Account, period?.From, period?.To, statement is { From: not null, To: not null }, CountAnswer.Of(statement.Transactions, money));
    }
}

/// <summary>A file as it was understood.</summary>
/// <param name="Name">The name of its field in the form; where it was the whole body, what the query calls its account.</param>
/// <param name="Format">The format, by its content.</param>
/// <param name="Accounts">The accounts in it.</param>
public sealed record FileAnswer(string Name, StatementFormat Format, IReadOnlyList<FileAccountAnswer> Accounts);

/// <summary>Whole days, both ends included.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day; it counts too.</param>
public sealed record PeriodAnswer(DateOnly From, DateOnly To)
{
    public static IReadOnlyList<PeriodAnswer> Of(IEnumerable<Period> periods) => [.. periods.Select(period => new PeriodAnswer(period.From, period.To))];
}

/// <summary>Which days of an account the files cover together.</summary>
/// <param name="Account">The account.</param>
/// <param name="Months">Months that are covered.</param>
/// <param name="Covered">The days that the files cover.</param>
/// <param name="Gaps">Days between that no file covers.</param>
/// <param name="Overlaps">Days that more than one file covers; their lines count once.</param>
public sealed record CoverageAnswer(string Account, decimal Months, IReadOnlyList<PeriodAnswer> Covered, IReadOnlyList<PeriodAnswer> Gaps, IReadOnlyList<PeriodAnswer> Overlaps)
{
    public static CoverageAnswer Of(Coverage coverage) =>
        new(coverage.Account, Rounding.Trim(Rounding.Nearest(coverage.Months, 4)), PeriodAnswer.Of(coverage.Covered), PeriodAnswer.Of(coverage.Gaps), PeriodAnswer.Of(coverage.Overlaps));
}

/// <summary>What became of the lines: every line that was read stands in exactly one of these, and they add up to what was read.</summary>
public sealed record AccountedAnswer(CountAnswer Read, CountAnswer Placed, CountAnswer Unplaced, CountAnswer Paired, CountAnswer OwnAccount, CountAnswer LeftOut, CountAnswer Duplicate, CountAnswer OutsidePeriod, CountAnswer ForeignCurrency)
{
    public static AccountedAnswer Of(Sorting sorting)
    {
        CountAnswer With(LineOutcome outcome) => CountAnswer.Of(sorting.Of[outcome].Select(sorted => sorted.Entry.Transaction), sorting.Currency);
        return new AccountedAnswer(CountAnswer.Of(sorting.All.Select(sorted => sorted.Entry.Transaction), sorting.Currency), With(LineOutcome.Placed), With(LineOutcome.Unplaced), With(LineOutcome.Paired), With(LineOutcome.OwnAccount),
            With(LineOutcome.LeftOut), With(LineOutcome.Duplicate), With(LineOutcome.OutsidePeriod), With(LineOutcome.ForeignCurrency));
    }
}

/// <summary>A line that was refused.</summary>
/// <param name="File" example="current">The file.</param>
/// <param name="Line" example="17">Its line, from 1.</param>
/// <param name="Code" example="bad-currency">What is wrong, as a stable word.</param>
/// <param name="Detail" example="The currency is no ISO 4217 code of three letters.">What is wrong, in a sentence.</param>
public sealed record RefusedLineAnswer(string File, int Line, string Code, string Detail);

/// <summary>Lines that were refused: how many, and the first hundred.</summary>
/// <param name="Count">How many.</param>
/// <param name="Lines">The first hundred.</param>
public sealed record RefusedAnswer(int Count, IReadOnlyList<RefusedLineAnswer> Lines)
{
    private const int Told = 100;

    public static RefusedAnswer Of(IReadOnlyList<SentFile> sent, IReadOnlyList<StatementFile> files, Sorting sorting)
    {
        var all = files.Index().SelectMany(file => file.Item.Refused.Select(line => new RefusedLineAnswer(sent[file.Index].Name, line.Line, line.Code, line.Detail)))
            .Concat(sorting.Of[LineOutcome.ForeignCurrency].Select(sorted => new RefusedLineAnswer(sent[sorted.Entry.File].Name, sorted.Entry.Transaction.Line, FaultCodes.CurrencyMismatch,
                $"The line is not in {sorting.Currency.Code}, and nothing is ever converted; add what it cost by hand."))).ToList();
        return new RefusedAnswer(all.Count, [.. all.Take(Told)]);
    }
}

/// <summary>A line of the draft and what it is made of.</summary>
/// <param name="To">What it is.</param>
/// <param name="CostKind">The kind of cost.</param>
/// <param name="Name">What the draft calls it.</param>
/// <param name="Rules">The rules that took its lines, as pointers into the reading rules.</param>
/// <param name="Count">How many lines.</param>
/// <param name="Total">What the files have of it, refunds taken off.</param>
/// <param name="Refunds">Money back that was taken off.</param>
/// <param name="First">The first of its lines.</param>
/// <param name="Last">The last of its lines.</param>
/// <param name="PerYear">What a year of it comes to.</param>
/// <param name="Reckoned">How the year was calculated.</param>
/// <param name="TimesAYear" example="12">With by-interval: how often a year.</param>
public sealed record DraftLineAnswer(
    Placement To, CostKind? CostKind, string Name, IReadOnlyList<string> Rules, int Count, decimal Total, decimal Refunds, DateOnly First, DateOnly Last, decimal PerYear, Reckoned Reckoned,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? TimesAYear)
{
    public static DraftLineAnswer Of(DraftLine line, Currency money) => new(line.Name.To, line.Name.CostKind, line.Name.Name, Pointers(line.Entries), line.Entries.Count,
        CountAnswer.Exactly(line.Total, money), CountAnswer.Exactly(line.Back, money), line.First, line.Last, money.Round(line.PerYear), line.Reckoned, line.TimesAYear);

    public static IReadOnlyList<string> Pointers(IEnumerable<Sorted> entries) => [.. entries.Select(sorted => sorted.Rule!.Value).Distinct().Order().Select(Pointer)];

    public static string Pointer(int rule) => FormattableString.Invariant($"#/rules/{rule}");
}

/// <summary>A purchase that the draft has as equipment instead of as an expense.</summary>
/// <param name="Pointer" example="#/draft/equipment/0">Where it stands in the draft; null where the stored profile has it already.</param>
/// <param name="CostKind">The kind of cost to use if it is an expense after all.</param>
/// <param name="Name" example="Kiln">What the draft calls it.</param>
/// <param name="Cost" example="3200.00">What it cost.</param>
/// <param name="Bought" example="2026-03-12">The day it was paid.</param>
/// <param name="Rule" example="#/rules/2">The rule that took the line.</param>
public sealed record BoughtAnswer(string? Pointer, CostKind? CostKind, string Name, decimal Cost, DateOnly Bought, string Rule)
{
    public static BoughtAnswer Of(CapitalPurchase one, CostProfile draft, Currency money)
    {
        var place = draft.Equipment.Index().Where(thing => thing.Item.Name == one.Name && thing.Item.Cost == one.Cost).Select(thing => (int?)thing.Index).FirstOrDefault();
        return new(place is { } index ? FormattableString.Invariant($"#/draft/equipment/{index}") : null, one.CostKind, one.Name, CountAnswer.Exactly(one.Cost, money), one.Entry.Entry.Date, DraftLineAnswer.Pointer(one.Entry.Rule!.Value));
    }
}

/// <summary>What similar lines were placed as.</summary>
/// <param name="To">What they were placed as.</param>
/// <param name="CostKind">The kind of cost.</param>
/// <param name="Name" example="Materials">What the draft calls it.</param>
/// <param name="Because" example="Lines with &quot;frit order&quot; were placed so.">What is alike.</param>
public sealed record SuggestionAnswer(Placement To, CostKind? CostKind, string Name, string Because);

/// <summary>Lines that look alike and that no rule took.</summary>
/// <param name="Text">What their texts have in common.</param>
/// <param name="Paid">In or out.</param>
/// <param name="Count">How many lines.</param>
/// <param name="Total">Their amounts together, above 0.</param>
/// <param name="First">The day of the first.</param>
/// <param name="Last">The day of the last.</param>
/// <param name="Suggested">What similar lines were placed as; null where there are none.</param>
public sealed record UnplacedAnswer(string Text, Paid Paid, int Count, decimal Total, DateOnly First, DateOnly Last, SuggestionAnswer? Suggested)
{
    public static UnplacedAnswer Of(Unplaced group, Currency money) => new(group.Text, group.Paid, group.Entries.Count, CountAnswer.Exactly(group.Total, money),
        group.Entries.Min(sorted => sorted.Entry.Date), group.Entries.Max(sorted => sorted.Entry.Date),
        group.Suggested is { } line ? new SuggestionAnswer(line.To, line.CostKind, line.Name, $"Lines with \"{group.Because}\" were placed so.") : null);
}

/// <summary>What a kind of cost or a line comes to a year in the stored profile and in the draft.</summary>
/// <param name="To">What it is.</param>
/// <param name="CostKind">The kind of cost.</param>
/// <param name="Name" example="Home rent">With household and other income: the line.</param>
/// <param name="Stored" example="6480.00">A year of it in the stored profile.</param>
/// <param name="Drafted" example="6720.00">A year of it in the draft.</param>
/// <param name="Difference" example="240.00">The draft less the stored profile.</param>
public sealed record DifferenceAnswer(Placement To, CostKind? CostKind, string? Name, decimal Stored, decimal Drafted, decimal Difference)
{
    public static DifferenceAnswer Of(ProfileDifference one, Currency money) => new(one.To, one.CostKind, one.Name, money.Round(one.Stored), money.Round(one.Drafted), money.Round(one.Drafted - one.Stored));
}

/// <summary>One line of a file with what became of it. Its words stay with the bank.</summary>
/// <param name="File" example="current">The file.</param>
/// <param name="Line" example="2">Its line, from 1.</param>
/// <param name="Date" example="2026-01-05">The day of the booking.</param>
/// <param name="Amount" example="-540.00">Below 0 for what went out.</param>
/// <param name="Outcome">What became of it.</param>
/// <param name="Rule" example="#/rules/0">The rule that took it, as a pointer into the reading rules.</param>
public sealed record LineAnswer(string File, int Line, DateOnly Date, decimal Amount, LineOutcome Outcome, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Rule)
{
    public static LineAnswer Of(Sorted sorted, IReadOnlyList<SentFile> sent, Currency money) => new(sent[sorted.Entry.File].Name, sorted.Entry.Transaction.Line, sorted.Entry.Date,
        CountAnswer.Exactly(sorted.Entry.Amount, money), sorted.Outcome, sorted.Rule is { } rule ? DraftLineAnswer.Pointer(rule) : null);
}

/// <summary>Writes the draft as the store would give it back: with all its defaults.</summary>
public sealed class DraftText : JsonConverter<CostProfile>
{
    public override CostProfile Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => throw new NotSupportedException();

    public override void Write(Utf8JsonWriter writer, CostProfile value, JsonSerializerOptions options) => writer.WriteRawValue(WireJson.WriteDocument(value, Currency.Of(value.Currency)));
}
