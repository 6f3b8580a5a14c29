using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

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
    [Share(Maximum = "0.9999")]
    public decimal WasteShare { get; init; }

    /// <summary>Pieces that share the quantity. At least 1.</summary>
    /// <example>24</example>
    [Quantity(Minimum = "1")]
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
