using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Years;

/// <summary>The year of a profile on one page. Money in the profile's currency and with its decimals.</summary>
public sealed record YearAnswer
{
    /// <summary>Name of the profile.</summary>
    /// <example>A small studio</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Name { get; init; }

    /// <summary>First day of the year.</summary>
    /// <example>2027-01-01</example>
    public required DateOnly YearStart { get; init; }

    /// <summary>ISO 4217 code.</summary>
    /// <example>USD</example>
    public required string Currency { get; init; }

    /// <summary>What sales must bring in over the year, rounded up.</summary>
    /// <example>60000.00</example>
    public required decimal RequiredRevenue { get; init; }

    /// <summary>
    /// What it is made of: kinds of cost from the largest down, then household, tax and, below 0, other taxable income. They add up to it, unless
    /// other income is more than all of the rest.
    /// </summary>
    public required IReadOnlyList<YearPartAnswer> Parts { get; init; }

    /// <summary>What a carrying hour must bring, rounded up.</summary>
    /// <example>30.00</example>
    public required decimal PerBenchHour { get; init; }

    /// <summary>As asked: what is planned.</summary>
    /// <example>52000.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Planned { get; init; }

    /// <summary>With planned: what it leaves open of the required revenue, rounded up; 0 if it is enough.</summary>
    /// <example>8000.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? NotPlanned { get; init; }

    /// <summary>As asked: what has come in.</summary>
    /// <example>21500.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Received { get; init; }

    /// <summary>With received: what is still to come, rounded up; 0 if all has come.</summary>
    /// <example>38500.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? StillToCome { get; init; }

    /// <summary>Kinds of cost that no line covers: the costs people forget.</summary>
    public required IReadOnlyList<CostKind> NotCovered { get; init; }

    /// <summary>The ten listed prices that bring most for each bench hour, from the highest; a design with its best channel.</summary>
    public required IReadOnlyList<CarryingDesignAnswer> CarryMost { get; init; }

    /// <summary>The revision that the answer rests on.</summary>
    public required IReadOnlyDictionary<string, string> Basis { get; init; }

    /// <summary>Defaults that the answer rests on and that lower it.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }
}

/// <summary>A part of what the year must bring in.</summary>
/// <param name="Part">What it is for.</param>
/// <param name="CostKind">With expenses: their kind; "other" if the lines have none.</param>
/// <param name="Amount" example="24000.00">Its amount over the year, to the nearest.</param>
public sealed record YearPartAnswer(RevenuePartOf Part,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] CostKind? CostKind, decimal Amount);

/// <summary>A listed price and what it brings for each bench hour.</summary>
public sealed record CarryingDesignAnswer
{
    /// <summary>Key of the design.</summary>
    /// <example>RB-014</example>
    public required string Sku { get; init; }

    /// <summary>Its name for people.</summary>
    /// <example>River drop pendant</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Name { get; init; }

    /// <summary>Key of the channel.</summary>
    /// <example>web</example>
    public required string Channel { get; init; }

    /// <summary>The listed price.</summary>
    /// <example>58.00</example>
    public required decimal ListedPrice { get; init; }

    /// <summary>The verdict on it.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>What the price leaves after channel and materials for each bench hour, to the nearest; compare it with perBenchHour.</summary>
    /// <example>58.44</example>
    public required decimal EarnedPerBenchHour { get; init; }
}
