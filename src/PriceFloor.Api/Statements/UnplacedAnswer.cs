using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

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
    public static UnplacedAnswer Of(Unplaced group, Currency money) => new(group.Text, group.Paid, group.Entries.Count,
        CountAnswer.Exactly(group.Total, money), group.Entries.Min(sorted => sorted.Entry.Date), group.Entries.Max(sorted => sorted.Entry.Date),
        group.Suggested is { } line
            ? new SuggestionAnswer(line.To, line.CostKind, line.Name, $"Lines with \"{group.Because}\" were placed so.")
            : null);
}

/// <summary>What similar lines were placed as.</summary>
/// <param name="To">What they were placed as.</param>
/// <param name="CostKind">The kind of cost.</param>
/// <param name="Name" example="Materials">What the draft calls it.</param>
/// <param name="Because" example="Lines with &quot;frit order&quot; were placed so.">What is alike.</param>
public sealed record SuggestionAnswer(Placement To, CostKind? CostKind, string Name, string Because);
