using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Markups;

/// <summary>One step from cost to price. Money to the nearest, shares up to six decimals.</summary>
public sealed record MarkupStepAnswer
{
    /// <summary>The step's name.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Name { get; init; }

    /// <summary>The cost of the piece.</summary>
    public required decimal Cost { get; init; }

    /// <summary>Its selling price, before tax.</summary>
    public required decimal Price { get; init; }

    /// <summary>Profit over cost; null if the cost is 0.</summary>
    public decimal? Markup { get; init; }

    /// <summary>Profit over price; null if the price is 0.</summary>
    public decimal? Margin { get; init; }

    /// <summary>Price less cost.</summary>
    public required decimal Profit { get; init; }

    public static MarkupStepAnswer Of(Markup markup, string? name, int decimals) => new()
    {
        Name = name,
        Cost = Rounding.Nearest(markup.Cost, decimals),
        Price = Rounding.Nearest(markup.Price, decimals),
        Markup = markup.OnCost is { } onCost ? Answers.Ratio(onCost) : null,
        Margin = markup.OnPrice is { } onPrice ? Answers.Ratio(onPrice) : null,
        Profit = Rounding.Nearest(markup.Profit, decimals),
    };
}
