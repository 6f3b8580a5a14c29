namespace PriceFloor.Api.Sureness;

/// <summary>What the ranges make of a plan.</summary>
public sealed record SurePlanAnswer
{
    /// <summary>The share of the draws in which it carries the year, two decimals.</summary>
    /// <example>0.25</example>
    public required decimal Closes { get; init; }

    /// <summary>The share of the draws in which the bench hours are enough, two decimals.</summary>
    /// <example>1.00</example>
    public required decimal WithinHours { get; init; }

    /// <summary>What its lines leave less what bench time must recover; negative when short, rounded down.</summary>
    public required SpreadAnswer SurplusBeforeTax { get; init; }

    /// <summary>The least cash at the end of a month.</summary>
    public required SpreadAnswer LowestCash { get; init; }

    /// <summary>
    /// The share by which all its prices must rise to close it in as many of the draws as sure says, in steps of 0.001; null if no
    /// share up to ten does.
    /// </summary>
    /// <example>0.274</example>
    public required decimal? RiseToClose { get; init; }
}

/// <summary>What it is worth to know more before something is taken or left. Money rounded down: it is the most that finding out may cost.</summary>
public sealed record WorthKnowingAnswer
{
    /// <summary>What taking it gains on average.</summary>
    /// <example>398.90</example>
    public required decimal Gain { get; init; }

    /// <summary>The share of the draws in which taking it loses, two decimals.</summary>
    /// <example>0.27</example>
    public required decimal Loses { get; init; }

    /// <summary>Of knowing all numbers exactly.</summary>
    /// <example>99.07</example>
    public required decimal All { get; init; }

    /// <summary>Of knowing each number alone, by its name.</summary>
    /// <example>{"design:RB-014#/making/steps/torch/handsOnMinutes": 85.50}</example>
    public required IReadOnlyDictionary<string, decimal> Numbers { get; init; }
}
