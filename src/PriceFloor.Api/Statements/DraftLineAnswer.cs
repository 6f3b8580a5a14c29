using System.Text.Json.Serialization;
using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>A line of the draft and its sources.</summary>
/// <param name="To">Where it belongs.</param>
/// <param name="CostKind">The kind of cost.</param>
/// <param name="Name">Its name in the draft.</param>
/// <param name="Rules">The rules that took its lines, as pointers into the reading rules; none for lines of a cash book that
/// say what they are.</param>
/// <param name="Count">How many lines.</param>
/// <param name="Total">The total in the files, less refunds.</param>
/// <param name="Refunds">Refunds that were deducted.</param>
/// <param name="First">The first of its lines.</param>
/// <param name="Last">The last of its lines.</param>
/// <param name="PerYear">The amount for a year.</param>
/// <param name="Reckoned">How the year was calculated.</param>
/// <param name="TimesAYear" example="12">With by-interval: the number of payments a year.</param>
public sealed record DraftLineAnswer(
    Placement To, CostKind? CostKind, string Name, IReadOnlyList<string> Rules, int Count, decimal Total, decimal Refunds, DateOnly First,
    DateOnly Last, decimal PerYear, Reckoned Reckoned,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? TimesAYear)
{
    public static DraftLineAnswer Of(DraftLine line, Currency money) => new(line.Name.To, line.Name.CostKind, line.Name.Name,
        Pointers(line.Entries), line.Entries.Count, CountAnswer.Exactly(line.Total, money), CountAnswer.Exactly(line.Back, money), line.First,
        line.Last, money.Round(line.PerYear), line.Reckoned, line.TimesAYear);

    public static IReadOnlyList<string> Pointers(IEnumerable<Sorted> entries) =>
        [.. entries.Select(sorted => sorted.Rule).OfType<int>().Distinct().Order().Select(Pointer)];

    public static string Pointer(int rule) => FormattableString.Invariant($"#/rules/{rule}");
}

/// <summary>A purchase that the draft has as equipment instead of as an expense.</summary>
/// <param name="Pointer" example="#/draft/equipment/0">Its place in the draft; null if the stored profile already has it.</param>
/// <param name="CostKind">The kind of cost to use if it is an expense after all.</param>
/// <param name="Name" example="Kiln">Its name in the draft.</param>
/// <param name="Cost" example="3200.00">Its price.</param>
/// <param name="Bought" example="2026-03-12">The day it was paid.</param>
/// <param name="Rule" example="#/rules/2">The rule that took the line; null if a cash book says it.</param>
public sealed record BoughtAnswer(string? Pointer, CostKind? CostKind, string Name, decimal Cost, DateOnly Bought, string? Rule)
{
    public static BoughtAnswer Of(CapitalPurchase one, CostProfile draft, Currency money)
    {
        var place = draft.Equipment.Index().Where(thing => thing.Item.Name == one.Name && thing.Item.Cost == one.Cost)
            .Select(thing => (int?)thing.Index).FirstOrDefault();
        return new(place is { } index ? FormattableString.Invariant($"#/draft/equipment/{index}") : null, one.CostKind, one.Name,
            CountAnswer.Exactly(one.Cost, money), one.Entry.Entry.Date, one.Entry.Rule is { } rule ? DraftLineAnswer.Pointer(rule) : null);
    }
}
