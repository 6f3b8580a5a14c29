using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

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
    [Quantity(Minimum = "1")]
    public decimal BatchSize { get; init; } = 1;

    /// <summary>Of the pieces that enter, the share that survives. At least 0.0001.</summary>
    /// <example>0.98</example>
    [Share(Minimum = "0.0001")]
    public decimal GoodShare { get; init; } = 1;

    /// <summary>Pieces that are worked over once in this step.</summary>
    public Rework? Rework { get; init; }

    /// <summary>False marks time that must not be shortened: annealing, curing, anything safety depends on.</summary>
    public bool MayBeHurried { get; init; } = true;

    /// <summary>The scarce thing that one batch takes a load of.</summary>
    /// <example>kiln</example>
    [MaxLength(Limits.KeyLength)]
    public string? Uses { get; init; }
}
