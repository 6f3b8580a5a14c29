using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Markups;

/// <summary>Cost, price, markup, margin and profit; the chain and the discounts where asked for.</summary>
public sealed record MarkupAnswer
{
    /// <summary>The whole step from first cost to last price; absent where only discounts were asked for.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Cost { get; init; }

    /// <summary>Before tax.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Price { get; init; }

    /// <summary>Profit over cost; null where the cost is nothing.</summary>
    [PresentWith(nameof(Cost))]
    public decimal? Markup { get; init; }

    /// <summary>Profit over price; null where the price is nothing.</summary>
    [PresentWith(nameof(Price))]
    public decimal? Margin { get; init; }

    /// <summary>Price less cost.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Profit { get; init; }

    /// <summary>With salesTax: what the buyer pays.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? PriceWithTax { get; init; }

    /// <summary>Each hand of the chain.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<MarkupStepAnswer>? Chain { get; init; }

    /// <summary>The discounts.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DiscountAnswer? Discounts { get; init; }

    /// <summary>With workings=true: each quantity in order, with 12 decimals at most.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}
