using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;

namespace PriceFloor.Api.PriceChecks;

/// <summary>
/// The verdict on a price. With the scope "verdict" the verdict and carriesItsShare; with "check" also floor and target price; with "read" also what
/// reveals costs.
/// </summary>
public sealed record PriceCheckAnswer
{
    /// <summary>In a batch: the design as it was sent.</summary>
    /// <example>RB-014</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Sku { get; init; }

    /// <summary>In a batch: the channel as it was sent.</summary>
    /// <example>web</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Channel { get; init; }

    /// <summary>Whether the price carries its share of the year and follows the studio's own rule.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Whether the net proceeds are at least the floor.</summary>
    public required bool CarriesItsShare { get; init; }

    /// <summary>
    /// True while pieces are sold off at the listed price (its clears): verdict and carriesItsShare stay as they are, and nobody needs to be stopped.
    /// Absent otherwise, and for a price below the listed one.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? Clearing { get; init; }

    /// <summary>The smallest allowed price whose net reaches the floor.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? FloorPrice { get; init; }

    /// <summary>The lowest price that also does not undercut shops that buy to sell on: the profile's priceRule.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? TargetPrice { get; init; }

    /// <summary>The price in question.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Price { get; init; }

    /// <summary>ISO 4217 code.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Currency { get; init; }

    /// <summary>Net proceeds: what reaches the studio for each piece that is not returned.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? NetProceeds { get; init; }

    /// <summary>Net proceeds less the floor on the channel; negative if the price is short.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? AboveFloor { get; init; }

    /// <summary>
    /// The most that may be taken off the price, instead of the channel's usual discount, so that it still carries its share: 0.25 is 25 %, in steps
    /// of 0.001. Absent if it does not carry its share even in full.
    /// </summary>
    /// <example>0.118</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? MostOff { get; init; }

    /// <summary>What the price really pays for an hour of making and selling.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? EarnedPerBenchHour { get; init; }

    /// <summary>What an hour of making or selling must bring, rounded up.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? PerBenchHour { get; init; }

    /// <summary>
    /// What would reach the household for each working hour if every carrying hour earned what this price pays; negative if the household
    /// would have to pay in.
    /// </summary>
    /// <example>15.98</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? TakeHomePerHourAtThisPrice { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required BasisAnswer Basis { get; init; }

    /// <summary>Defaults that the answer rests on and that lower the floor.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<AssumptionAnswer>? Assumed { get; init; }

    /// <summary>What may make the figures wrong; without "read" only not-an-allowed-price.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true and the scope "read": each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}
