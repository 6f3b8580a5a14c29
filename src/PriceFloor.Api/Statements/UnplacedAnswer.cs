using System.Text.Json.Serialization;
using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>Similar lines that no rule took.</summary>
/// <param name="Text">The text of the newest of them.</param>
/// <param name="Common" example="Riverside choir">What all their texts have in common, without numbers; null if there is nothing.</param>
/// <param name="Paid">In or out.</param>
/// <param name="Count">How many lines.</param>
/// <param name="Total">The sum of their amounts, above 0.</param>
/// <param name="First">The day of the first.</param>
/// <param name="Last">The day of the last.</param>
/// <param name="Suggested">Where similar lines were placed; null if there are none.</param>
/// <param name="Rule">A reading rule that takes all of them, to be completed and put before the others; null if their texts have no word.</param>
public sealed record UnplacedAnswer(string Text, string? Common, Paid Paid, int Count, decimal Total, DateOnly First, DateOnly Last,
    SuggestionAnswer? Suggested, RuleToCompleteAnswer? Rule)
{
    public static UnplacedAnswer Of(Unplaced group, Currency money) => new(group.Text, group.Common, group.Paid, group.Entries.Count,
        CountAnswer.Exactly(group.Total, money), group.Entries.Min(sorted => sorted.Entry.Date), group.Entries.Max(sorted => sorted.Entry.Date),
        group.Suggested is { } line
            ? new SuggestionAnswer(line.To, line.CostKind, line.Name, $"Lines with \"{group.Because}\" were placed there.")
            : null,
        RuleToCompleteAnswer.Of(group));
}

/// <summary>A reading rule to complete: say what the lines are in "to", and change what is not right.</summary>
/// <param name="TextHas" example="Riverside choir">A part of their texts: what they have in common, without a town that many payees have.</param>
/// <param name="TextMatches" example="frit.*order">A pattern, if the texts have only words in common and not what is between them.</param>
/// <param name="Paid">Which way the money went.</param>
/// <param name="To">What the lines are, if similar ones were placed; null: fill it in.</param>
/// <param name="CostKind">The kind of cost of similar lines.</param>
/// <param name="BusinessShare" example="0.5">The business's share of similar lines, if it is not the usual one.</param>
/// <param name="TracedTo">Where the cost of similar lines is recovered.</param>
/// <param name="IncomeKind">Whether similar income was already taxed.</param>
/// <param name="Name" example="Materials">The name of the line in the profile.</param>
public sealed record RuleToCompleteAnswer(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? TextHas,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? TextMatches,
    Paid Paid, Placement? To,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] CostKind? CostKind,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] decimal? BusinessShare,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] TracedTo? TracedTo,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IncomeKind? IncomeKind,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Name)
{
    public static RuleToCompleteAnswer? Of(Unplaced group)
    {
        if (group is { Has: null, Pattern: null })
            return null;
        var line = group.Suggested;
        var usual = line?.To == Placement.Business ? 1 : 0;
        return new RuleToCompleteAnswer(group.Has, group.Pattern, group.Paid, line?.To, line?.CostKind,
            line is not null && line.BusinessShare != usual ? line.BusinessShare : null, line?.TracedTo, line?.IncomeKind, line?.Name);
    }
}

/// <summary>Where similar lines were placed.</summary>
/// <param name="To">Where they were placed.</param>
/// <param name="CostKind">The kind of cost.</param>
/// <param name="Name" example="Materials">Its name in the draft.</param>
/// <param name="Because" example="Lines with &quot;frit order&quot; were placed there.">The similarity.</param>
public sealed record SuggestionAnswer(Placement To, CostKind? CostKind, string Name, string Because);
