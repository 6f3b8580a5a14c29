using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OrderChecks;

/// <summary>
/// The verdict on an order. With the scope "verdict" the verdict, carriesItsShare and currency; with "check" also total and leastTotal; with "read"
/// also what reveals costs. Money in the channel's currency.
/// </summary>
public sealed record OrderCheckAnswer
{
    /// <summary>In a batch: the channel as it was sent.</summary>
    /// <example>web</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Channel { get; init; }

    /// <summary>Whether the order carries the share of all its pieces; absent if only leastOrder was asked for.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public OrderVerdict? Verdict { get; init; }

    /// <summary>Whether what reaches the studio is at least the sum of the floors.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? CarriesItsShare { get; init; }

    /// <summary>ISO 4217 code.</summary>
    /// <example>USD</example>
    public required string Currency { get; init; }

    /// <summary>The items' prices together, as listed, before the offer.</summary>
    /// <example>160.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Total { get; init; }

    /// <summary>
    /// The smallest sum of the items' prices, as listed and before the offer, that still carries the same pieces with the same shipping and offer.
    /// </summary>
    /// <example>142.57</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? LeastTotal { get; init; }

    /// <summary>What of the whole order reaches the studio.</summary>
    /// <example>149.77</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? NetProceeds { get; init; }

    /// <summary>What all its pieces and its selling must bring in, to the nearest.</summary>
    /// <example>132.96</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Floors { get; init; }

    /// <summary>Net proceeds less the floors; negative if the order is short.</summary>
    /// <example>16.81</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? AboveFloor { get; init; }

    /// <summary>
    /// The most that may be taken off the items' prices, in place of the offer's discount, so that the order still carries its share: 0.105 is
    /// 10.5 %, in steps of 0.001. Null if it does not carry its share even with nothing taken off.
    /// </summary>
    /// <example>0.108</example>
    [PresentWith(nameof(NetProceeds))]
    public decimal? MostOff { get; init; }

    /// <summary>Each item's part, in the order of the request.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<OrderItemAnswer>? Items { get; init; }

    /// <summary>Each gift's part: what it must bring in, below zero. Items and gifts together are aboveFloor.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<OrderGiftAnswer>? Gifts { get; init; }

    /// <summary>With leastOrder: from what total on an order of one design carries its share.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LeastOrderAnswer? LeastOrder { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required OrderBasisAnswer Basis { get; init; }

    /// <summary>With the scope "read": defaults that the answer rests on and that lower the floors.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<AssumptionAnswer>? Assumed { get; init; }

    /// <summary>What may make the figures wrong; without "read" only not-an-allowed-price.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true and the scope "read": each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}

/// <summary>One item of an order.</summary>
/// <param name="Sku" example="RB-014">The design, as it was sent.</param>
/// <param name="Pieces" example="2">How many of it.</param>
/// <param name="Price" example="58.00">The price of one, before the offer.</param>
/// <param name="AboveFloor" example="-0.08">
/// Its part of the order's aboveFloor: what reaches the studio, shared by value, less the item's own floors; negative if others carry it.
/// </param>
public sealed record OrderItemAnswer(string Sku, [property: WholeNumber] decimal Pieces, decimal Price, decimal AboveFloor);

/// <summary>One gift of an order.</summary>
/// <param name="Sku" example="RB-014">The design, as it was sent.</param>
/// <param name="Pieces" example="2">How many of it.</param>
/// <param name="AboveFloor" example="-24.29">Its part of the order's aboveFloor: what its pieces must bring in, below zero.</param>
public sealed record OrderGiftAnswer(string Sku, [property: WholeNumber] decimal Pieces, decimal AboveFloor);

/// <summary>The revisions that an answer about an order rests on.</summary>
public sealed record OrderBasisAnswer
{
    /// <summary>The profile of the order's designs; absent without items.</summary>
    /// <example>main@1</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Profile { get; init; }

    /// <summary>The channel.</summary>
    /// <example>web@1</example>
    public required string Channel { get; init; }

    /// <summary>The designs, each once: of the items, then of the gifts.</summary>
    /// <example>["RB-014@1"]</example>
    public required IReadOnlyList<string> Designs { get; init; }

    /// <summary>The listed prices of items that were sent without a price.</summary>
    /// <example>["RB-014/web@1"]</example>
    public required IReadOnlyList<string> ListedPrices { get; init; }
}
