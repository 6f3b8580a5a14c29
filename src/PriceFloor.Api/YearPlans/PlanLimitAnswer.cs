using System.Text.Json.Serialization;

namespace PriceFloor.Api.YearPlans;

/// <summary>One limit of the year and what the plan takes of it.</summary>
public sealed record PlanLimitAnswer
{
    /// <summary>"hours", or the name of the scarce thing.</summary>
    public required string Name { get; init; }

    /// <summary>Bench hours, or loads of a scarce thing.</summary>
    public required LimitKind Kind { get; init; }

    /// <summary>What the plan takes, up to four decimals.</summary>
    public required decimal Used { get; init; }

    /// <summary>What the year has, hours kept back taken off; null where the profile sets no limit.</summary>
    public decimal? Available { get; init; }

    /// <summary>Whether it is enough.</summary>
    public required bool Within { get; init; }

    /// <summary>For a best plan: whether it keeps a better plan away.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? Binds { get; init; }

    /// <summary>
    /// For a best plan: what one more hour or load would add to the surplus (or, for the fewest hours, the hours it would save).
    /// Absent where it is not known for certain.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? WorthOfOneMore { get; init; }
}

/// <summary>What a limit counts.</summary>
public enum LimitKind { BenchHours, Loads }
