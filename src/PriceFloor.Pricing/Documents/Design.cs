using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>How one piece is made: its bench time, its materials, and what is lost on the way.</summary>
public sealed record Design
{
    /// <summary>A name for people.</summary>
    /// <example>River drop pendant</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Key of the cost profile that the piece must carry.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Profile { get; init; }

    /// <summary>
    /// Other names that shops list it under, such as "RB-014 / blue": 1 to 128 printable characters each, matched in bodies
    /// and sheets. No two designs share one.
    /// </summary>
    [MaxLength(Limits.Aliases), EachText(1, Limits.AliasLength)]
    public IReadOnlyList<string> Aliases { get; init; } = [];

    /// <summary>The bench time, given in one of four ways.</summary>
    public required Making Making { get; init; }

    /// <summary>What goes into the piece.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<MaterialLine> Materials { get; init; } = [];

    /// <summary>What rejected pieces still bring.</summary>
    public Seconds? Seconds { get; init; }

    /// <summary>Work that is done once for the design, spread over the pieces expected of it.</summary>
    public Development? Development { get; init; }

    /// <summary>Of the finished pieces, the share that ever sells at its price. Absent: the profile's. At least 0.0001.</summary>
    /// <example>0.9</example>
    [Share(Minimum = "0.0001")]
    public decimal? SoldShare { get; init; }
}
