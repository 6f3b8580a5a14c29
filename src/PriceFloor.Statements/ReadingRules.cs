using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Statements;

/// <summary>An ordered list of rules that say what a line of a statement is. The first that matches wins.</summary>
public sealed record ReadingRules
{
    /// <summary>A name for people.</summary>
    /// <example>My two accounts</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Tried in order; a line that none matches stays unplaced.</summary>
    [MaxLength(Limits.Lines)]
    public required IReadOnlyList<ReadingRule> Rules { get; init; }
}
