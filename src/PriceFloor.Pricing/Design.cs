using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing;

/// <summary>How one piece is made: its bench time, its materials, and what is lost on the way.</summary>
public sealed record Design
{
    /// <summary>A name for people.</summary>
    /// <example>River drop pendant</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Key of the cost profile that the piece must carry.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength)]
    public required string Profile { get; init; }

    /// <summary>Other names that shops list it under, such as "RB-014 / blue": 1 to 128 printable characters each, matched in bodies and sheets. No two designs share one.</summary>
    [MaxLength(Limits.Aliases), EachText(1, Limits.AliasLength)]
    public IReadOnlyList<string> Aliases { get; init; } = [];

    /// <summary>The bench time, told in one of four ways.</summary>
    public required Making Making { get; init; }

    /// <summary>What goes into the piece.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<MaterialLine> Materials { get; init; } = [];

    /// <summary>What rejected pieces still bring.</summary>
    public Seconds? Seconds { get; init; }

    /// <summary>Of the finished pieces, the share that ever sells at its price. Absent: the profile's. At least 0.0001.</summary>
    /// <example>0.9</example>
    [Share(Least = "0.0001")]
    public decimal? SoldShare { get; init; }
}

/// <summary>The bench time of a piece: exactly one of <c>piecesPerDay</c>, <c>piecesPerBenchDay</c>, <c>minutesPerPiece</c> and <c>steps</c>.</summary>
public sealed record Making
{
    /// <summary>Pieces started a working day, averaged over all working days, packing and book-keeping days included.</summary>
    /// <example>4</example>
    [Quantity(Above = true)]
    public decimal? PiecesPerDay { get; init; }

    /// <summary>Pieces started in a day spent wholly at the bench.</summary>
    /// <example>6</example>
    [Quantity(Above = true)]
    public decimal? PiecesPerBenchDay { get; init; }

    /// <summary>Bench minutes for each piece started.</summary>
    /// <example>45</example>
    [Quantity]
    public decimal? MinutesPerPiece { get; init; }

    /// <summary>The steps in order; time that nobody attends is not bench time.</summary>
    [MaxLength(Limits.Steps)]
    public IReadOnlyList<Step>? Steps { get; init; }

    /// <summary>Of the pieces started, the share that comes out good. Not with <c>steps</c>, which have their own. At least 0.0001.</summary>
    /// <example>0.95</example>
    [Share(Least = "0.0001")]
    public decimal GoodShare { get; init; } = 1;

    /// <summary>Bench minutes to set up one run.</summary>
    /// <example>15</example>
    [Quantity]
    public decimal SetupMinutes { get; init; }

    /// <summary>Pieces started in one run; needed with <c>setupMinutes</c>.</summary>
    /// <example>12</example>
    [Quantity(Least = "1")]
    public decimal? RunSize { get; init; }
}

/// <summary>One step of making.</summary>
public sealed record Step
{
    /// <summary>A name that is used once; materials can point to it.</summary>
    /// <example>torch</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Attended minutes for one batch.</summary>
    /// <example>34</example>
    [Quantity]
    public required decimal HandsOnMinutes { get; init; }

    /// <summary>Pieces that enter the step together: the load usually fired, not the load that would fit. At least 1.</summary>
    /// <example>24</example>
    [Quantity(Least = "1")]
    public decimal BatchSize { get; init; } = 1;

    /// <summary>Of the pieces that enter, the share that survives. At least 0.0001.</summary>
    /// <example>0.98</example>
    [Share(Least = "0.0001")]
    public decimal GoodShare { get; init; } = 1;

    /// <summary>False marks time that must not be shortened: annealing, curing, anything safety depends on.</summary>
    public bool MayBeHurried { get; init; } = true;

    /// <summary>The scarce thing that one batch takes a load of.</summary>
    /// <example>kiln</example>
    [MaxLength(Limits.KeyLength)]
    public string? Uses { get; init; }
}

/// <summary>What goes into a piece: either a <c>material</c> of the price list with its <c>quantity</c>, or an <c>amount</c> of money.</summary>
public sealed record MaterialLine
{
    /// <summary>A material of the profile's price list.</summary>
    /// <example>clear-rod</example>
    [MaxLength(Limits.KeyLength)]
    public string? Material { get; init; }

    /// <summary>Units of the material in the finished piece (or the batch).</summary>
    /// <example>0.062</example>
    [Quantity]
    public decimal? Quantity { get; init; }

    /// <summary>Of what is drawn from stock, the share that is lost; at most 0.9999.</summary>
    /// <example>0.08</example>
    [Share(Most = "0.9999")]
    public decimal WasteShare { get; init; }

    /// <summary>Pieces that share the quantity. At least 1.</summary>
    /// <example>24</example>
    [Quantity(Least = "1")]
    public decimal BatchSize { get; init; } = 1;

    /// <summary>With <c>amount</c>: a name for people.</summary>
    /// <example>gift box</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Money for each piece at that point, in the profile's currency.</summary>
    /// <example>1.55</example>
    [Money]
    public decimal? Amount { get; init; }

    /// <summary>Where it is used: "start", "finish" or a step's name. What is used early is paid for lost pieces too.</summary>
    /// <example>start</example>
    [MaxLength(Limits.NameLength)]
    public string At { get; init; } = "start";
}

/// <summary>What rejected pieces still bring.</summary>
public sealed record Seconds
{
    /// <summary>The share of the rejected pieces that is sold as seconds.</summary>
    /// <example>0.4</example>
    [Share]
    public decimal Share { get; init; }

    /// <summary>What one second brings net, in the profile's currency.</summary>
    /// <example>11.00</example>
    [Money]
    public required decimal Price { get; init; }
}
