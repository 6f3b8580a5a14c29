using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Markups;

/// <summary>Cost, price, markup, margin and profit; the chain and the discounts if requested.</summary>
public sealed record MarkupAnswer
{
    /// <summary>The whole step from first cost to last price; absent if only discounts were requested.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Cost { get; init; }

    /// <summary>Before tax.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Price { get; init; }

    /// <summary>Profit over cost; null if the cost is 0.</summary>
    [PresentWith(nameof(Cost))]
    public decimal? Markup { get; init; }

    /// <summary>Profit over price; null if the price is 0.</summary>
    [PresentWith(nameof(Price))]
    public decimal? Margin { get; init; }

    /// <summary>Price less cost.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Profit { get; init; }

    /// <summary>With salesTax: the buyer's total.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? PriceWithTax { get; init; }

    /// <summary>Each seller of the chain.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<MarkupStepAnswer>? Chain { get; init; }

    /// <summary>The discounts.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DiscountAnswer? Discounts { get; init; }

    /// <summary>With workings=true: each quantity in order, with at most 12 decimals.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}
