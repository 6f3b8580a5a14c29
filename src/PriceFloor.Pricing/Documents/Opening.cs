using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>What is there when the year begins.</summary>
public sealed record Opening
{
    /// <summary>Cash and bank, with deposits that have come in and what is set aside for taxes; below zero if it is overdrawn.</summary>
    /// <example>3000.00</example>
    [Money(Minimum = "-1000000000000")]
    public decimal Cash { get; init; }

    /// <summary>What of the cash is set aside for income taxes.</summary>
    /// <example>2300.00</example>
    [Money]
    public decimal TaxSetAside { get; init; }

    /// <summary>What of the cash is sales tax that was collected and not yet paid on.</summary>
    /// <example>180.00</example>
    [Money]
    public decimal SalesTaxHeld { get; init; }

    /// <summary>What others owe for sales of the year before, by the month in which it comes in.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<OwedToUs> OwedToUs { get; init; } = [];

    /// <summary>Finished pieces that lie ready.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<StockOfPieces> Stock { get; init; } = [];
}

/// <summary>Money that others owe.</summary>
public sealed record OwedToUs
{
    /// <summary>Month of the profile's year in which it comes in, 1 to 12.</summary>
    /// <example>1</example>
    [Pieces(Minimum = "1", Maximum = "12")]
    public required decimal Month { get; init; }

    /// <summary>The amount.</summary>
    /// <example>764.93</example>
    [Money]
    public required decimal Amount { get; init; }
}

/// <summary>Finished pieces of a design.</summary>
public sealed record StockOfPieces
{
    /// <summary>Key or alias of a stored design; the key is stored.</summary>
    /// <example>OR-002</example>
    [MaxLength(Limits.AliasLength)]
    public required string Sku { get; init; }

    /// <summary>Whole pieces.</summary>
    /// <example>40</example>
    [Pieces]
    public required decimal Pieces { get; init; }
}
