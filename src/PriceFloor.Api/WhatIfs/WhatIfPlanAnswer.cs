using System.Text.Json.Serialization;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Plans;

namespace PriceFloor.Api.WhatIfs;

/// <summary>The figures of a plan that a what-if shows, as year plans and the months of a plan have them.</summary>
public sealed record WhatIfPlanAnswer
{
    /// <summary>Whether the plan carries the whole year; not among differences.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? Closes { get; init; }

    /// <summary>What all lines leave for what bench time must recover.</summary>
    /// <example>60368.39</example>
    public required decimal Contribution { get; init; }

    /// <summary>The surplus before tax, rounded down; 0 if the year does not close.</summary>
    /// <example>0.00</example>
    public required decimal SurplusBeforeTax { get; init; }

    /// <summary>The part of it that is left after tax, rounded down; 0 if the year does not close.</summary>
    /// <example>0.00</example>
    public required decimal SurplusAfterTax { get; init; }

    /// <summary>What is missing before tax, rounded up; 0 if the year closes.</summary>
    /// <example>2954.91</example>
    public required decimal Shortfall { get; init; }

    /// <summary>The month that ends with the least cash.</summary>
    public required LowPointAnswer LowestCash { get; init; }
}

/// <summary>One way to close the plan, alone.</summary>
public sealed record PlanRemedyAnswer
{
    /// <summary>Which way.</summary>
    public required PlanWay Way { get; init; }

    /// <summary>Whether it can be enough alone.</summary>
    public required bool Possible { get; init; }

    /// <summary>Why it is not possible; null if it is.</summary>
    /// <example>hours-not-short</example>
    public required string? Reason { get; init; }

    /// <summary>
    /// The smallest that is enough: the share by which prices rise, in steps of 0.001; the factor of all units, four decimals; else money a year.
    /// Null if it is not possible.
    /// </summary>
    /// <example>0.041</example>
    public required decimal? Value { get; init; }

    /// <summary>
    /// The changes that do it, ready to be sent behind those of the scenario. Null if it is not possible, or no few changes do it: what is to be
    /// saved is more than the lines that may be cut, or more than 200 would be needed.
    /// </summary>
    public required IReadOnlyList<DocumentChange>? Changes { get; init; }
}

/// <summary>What holding prices costs while costs have moved, each rounded up; negative if it gains.</summary>
public sealed record HeldAnswer
{
    /// <summary>Over the whole year.</summary>
    /// <example>442.57</example>
    public required decimal Year { get; init; }

    /// <summary>From the day on which costs rise to the end of the year.</summary>
    /// <example>376.87</example>
    public required decimal FromOn { get; init; }

    /// <summary>On each channel that is given notice, from that day until its notice is over.</summary>
    public required IReadOnlyList<NoticeAnswer> ByNotice { get; init; }

    /// <summary>With phases: from the day on which costs rise to the end of the year, if prices rise in these steps.</summary>
    /// <example>312.40</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Phased { get; init; }
}

/// <summary>A channel that is given notice.</summary>
/// <param name="Channel" example="wholesale">Its key.</param>
/// <param name="Weeks" example="8">How many weeks of seven days.</param>
/// <param name="Cost" example="7.35">What holding its prices so long costs, rounded up.</param>
/// <param name="AnnounceBy" example="2027-02-04">The last day on which a rise on the day when costs rise can be announced.</param>
public sealed record NoticeAnswer(string Channel, decimal Weeks, decimal Cost, DateOnly AnnounceBy);

/// <summary>A step of rising prices.</summary>
public sealed record PhaseAnswer
{
    /// <summary>The day from which its prices count.</summary>
    /// <example>2027-04-01</example>
    public required DateOnly On { get; init; }

    /// <summary>The share of the whole rise.</summary>
    /// <example>0.5</example>
    public required decimal Share { get; init; }

    /// <summary>What holding prices costs from then until the next phase or the end of the year, at these prices; rounded up.</summary>
    /// <example>120.30</example>
    public required decimal Held { get; init; }

    /// <summary>The new listed prices, of those whose verdict fell.</summary>
    public required IReadOnlyList<PhasedPriceAnswer> Prices { get; init; }
}

/// <summary>A listed price in a phase.</summary>
/// <param name="Sku" example="GB-001">Key of the design.</param>
/// <param name="Channel" example="wholesale">Key of the channel.</param>
/// <param name="Price" example="143.00">The smallest allowed price that has risen by the share of the phase.</param>
public sealed record PhasedPriceAnswer(string Sku, string Channel, decimal Price);
