using System.Text.Json.Serialization;
using PriceFloor.Evidence.Findings;

namespace PriceFloor.Api.Evidence;

/// <summary>One number taken from the lines, and what it says of the number that is stored.</summary>
public sealed record FindingAnswer
{
    /// <summary>JSON pointer into the draft: the field that it speaks about.</summary>
    /// <example>#/making/steps/1/goodShare</example>
    public required string Pointer { get; init; }

    /// <summary>The number.</summary>
    public required decimal Value { get; init; }

    /// <summary>The lower end of its range; null where too little was seen for one.</summary>
    public required decimal? Low { get; init; }

    /// <summary>The upper end.</summary>
    public required decimal? High { get; init; }

    /// <summary>How many were seen.</summary>
    public required long Observations { get; init; }

    /// <summary>What of.</summary>
    /// <example>pieces started</example>
    public required string Of { get; init; }

    /// <summary>As how many single pieces they are worth, since pieces of one load or order fail together; absent where it is as many.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Worth { get; init; }

    /// <summary>
    /// How much of the number is the design's own; the rest is what the other designs of its profile say. Absent where fewer than eight of them do.
    /// </summary>
    /// <example>0.35</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? OwnWeight { get; init; }

    /// <summary>What is stored there; null if nothing is.</summary>
    public required decimal? Stored { get; init; }

    /// <summary>Whether the stored number lies within the range; with too-few, nothing is drafted.</summary>
    public required Says Says { get; init; }

    /// <summary>The floor with this finding alone, rounded up.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? FloorWith { get; init; }

    /// <summary>"learning-curve": the value is today's point of the curve.</summary>
    /// <example>learning-curve</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Method { get; init; }

    /// <summary>For fees: what the orders' fees come to by the channel, and what was charged.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Expected { get; init; }

    /// <summary>For fees: what was charged.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Charged { get; init; }

    /// <summary>For fees: charged less expected.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Difference { get; init; }

    /// <summary>For fees: the five orders that are furthest apart.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ReplayedOrderAnswer>? Worst { get; init; }

    /// <summary>For fees that differ: the rate of all that buyers paid, and the fixed amount an order, that fit what was charged best.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public FittedFeeAnswer? Fitted { get; init; }

    public static FindingAnswer From(Finding finding, Currency money, decimal? floorWith = null) => new()
    {
        Pointer = "#" + finding.Pointer,
        Value = finding.Estimate.Value,
        Low = finding.Estimate.Low,
        High = finding.Estimate.High,
        Observations = finding.Observations,
        Of = finding.Of,
        Worth = finding.Worth,
        OwnWeight = finding.OwnWeight,
        Stored = finding.Stored is { } stored ? Rounding.Trim(stored) : null,
        Says = finding.Says,
        FloorWith = floorWith is { } floor ? money.RoundUp(floor) : null,
        Method = finding.Method,
        Expected = finding.Fees is { } fees ? money.Round(fees.Expected) : null,
        Charged = finding.Fees is { } paid ? money.Round(paid.Charged) : null,
        Difference = finding.Fees is { } replay ? money.Round(replay.Difference) : null,
        Worst = finding.Fees?.FurthestApart.Select(order => ReplayedOrderAnswer.Of(order, money)).ToList(),
        Fitted = finding.Fees is { Differs: true } differing && differing.Fitted(money.Decimals) is { } line ? new(line.Rate, line.Fixed) : null,
    };
}

/// <summary>One order's fees.</summary>
/// <param name="On">Its day.</param>
/// <param name="Pieces">Its pieces.</param>
/// <param name="Expected">By the channel's fees.</param>
/// <param name="Charged">As recorded.</param>
/// <param name="Difference">Charged less expected.</param>
public sealed record ReplayedOrderAnswer(DateOnly On, int Pieces, decimal Expected, decimal Charged, decimal Difference)
{
    public static ReplayedOrderAnswer Of(ReplayedOrder order, Currency money) =>
        new(order.On, order.Pieces, money.Round(order.Expected), money.Round(order.Charged), money.Round(order.Difference));
}

/// <summary>A fee that fits what was charged.</summary>
/// <param name="Rate">The rate.</param>
/// <param name="Fixed">The fixed amount an order.</param>
public sealed record FittedFeeAnswer(decimal Rate, decimal Fixed);
