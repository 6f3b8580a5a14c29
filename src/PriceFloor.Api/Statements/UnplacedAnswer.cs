using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>Similar lines that no rule took.</summary>
/// <param name="Text">The common part of their texts.</param>
/// <param name="Paid">In or out.</param>
/// <param name="Count">How many lines.</param>
/// <param name="Total">The sum of their amounts, above 0.</param>
/// <param name="First">The day of the first.</param>
/// <param name="Last">The day of the last.</param>
/// <param name="Suggested">Where similar lines were placed; null if there are none.</param>
public sealed record UnplacedAnswer(string Text, Paid Paid, int Count, decimal Total, DateOnly First, DateOnly Last, SuggestionAnswer? Suggested)
{
    public static UnplacedAnswer Of(Unplaced group, Currency money) => new(group.Text, group.Paid, group.Entries.Count,
        CountAnswer.Exactly(group.Total, money), group.Entries.Min(sorted => sorted.Entry.Date), group.Entries.Max(sorted => sorted.Entry.Date),
        group.Suggested is { } line
            ? new SuggestionAnswer(line.To, line.CostKind, line.Name, $"Lines with \"{group.Because}\" were placed there.")
            : null);
}

/// <summary>Where similar lines were placed.</summary>
/// <param name="To">Where they were placed.</param>
/// <param name="CostKind">The kind of cost.</param>
/// <param name="Name" example="Materials">Its name in the draft.</param>
/// <param name="Because" example="Lines with &quot;frit order&quot; were placed there.">The similarity.</param>
public sealed record SuggestionAnswer(Placement To, CostKind? CostKind, string Name, string Because);
