using System.Text.Json.Serialization;

namespace PriceFloor.Api.YearPlans;

/// <summary>One limit of the year and how much of it the plan takes.</summary>
public sealed record PlanLimitAnswer
{
    /// <summary>
    /// "hours", "selling", the name of the scarce thing, the key of the channel with the stall, or, for a best plan with seasons,
    /// "hours-through-month-3" and the like.
    /// </summary>
    public required string Name { get; init; }

    /// <summary>
    /// Bench hours, loads of a scarce thing, hours of selling, pieces that the year's stalls of a channel sell, or bench hours from the first month
    /// through another.
    /// </summary>
    public required LimitKind Kind { get; init; }

    /// <summary>What the plan takes, up to four decimals.</summary>
    public required decimal Used { get; init; }

    /// <summary>What the year has, less the hours kept back; null if the profile sets no limit.</summary>
    public decimal? Available { get; init; }

    /// <summary>Whether it is enough.</summary>
    public required bool Within { get; init; }

    /// <summary>For a best plan: whether it prevents a better plan.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? Binds { get; init; }

    /// <summary>
    /// For a best plan: what one more hour, load or piece would add to the surplus (or, for the fewest hours, the hours it would save).
    /// Absent where it is not known for certain.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? WorthOfOneMore { get; init; }
}
