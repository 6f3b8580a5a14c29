using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>A listed price as a row of a sheet.</summary>
internal sealed record ListedPriceRow
{
    /// <summary>Key of the channel.</summary>
    [MaxLength(Limits.KeyLength)]
    public required string Channel { get; init; }

    /// <summary>One of the design's other names, if the price is that name's own.</summary>
    [MaxLength(Limits.AliasLength)]
    public string? Alias { get; init; }

    /// <summary>The listed price, in the channel's currency.</summary>
    [Price(Above = true)]
    public required decimal Price { get; init; }

    /// <summary>Slow stock that is sold off at this price.</summary>
    public Clears? Clears { get; init; }
}
