using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Plans;

/// <summary>A planned year month by month. Money in the profile's currency.</summary>
public sealed record PlanMonthsAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The twelve months of the profile's year.</summary>
    public required IReadOnlyList<PlanMonthAnswer> Months { get; init; }

    /// <summary>The sums of their flows.</summary>
    public required PlanFlowsAnswer Year { get; init; }

    /// <summary>The profit before tax that the plan brings.</summary>
    /// <example>42644.68</example>
    public required decimal Profit { get; init; }

    /// <summary>The tax on it.</summary>
    /// <example>8601.33</example>
    public required decimal Tax { get; init; }

    /// <summary>What others owe when the year ends.</summary>
    /// <example>764.93</example>
    public required decimal OwedAtEnd { get; init; }

    /// <summary>The month that ends with the least cash; the first of equals.</summary>
    public required LowPointAnswer LowestCash { get; init; }

    /// <summary>The month that ends with the least free cash; the first of equals.</summary>
    public required LowPointAnswer LowestFree { get; init; }

    /// <summary>What cash the year must begin with to keep the reserve; rounded up.</summary>
    /// <example>17838.96</example>
    public required decimal OpeningNeeded { get; init; }

    /// <summary>The first month in which more is made than its own sales take; null if there is none.</summary>
    /// <example>9</example>
    [WholeNumber]
    public decimal? BuildFrom { get; init; }

    /// <summary>The most bench hours of work that lie ready at any time, without the opening stock; four decimals, rounded up.</summary>
    /// <example>44.0923</example>
    public required decimal StockAtMost { get; init; }

    /// <summary>From the profit of the year to the change of its cash.</summary>
    public required ReconciledAnswer Reconciled { get; init; }

    /// <summary>The revisions that the answer rests on: the plan, the profile, then each line's design and channel.</summary>
    public required IReadOnlyDictionary<string, object> Basis { get; init; }

    /// <summary>Defaults that the answer rests on; a month that nothing says moves the low point.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong, or the year hard.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity of the year, of the plan's lines and of each month, in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}

/// <summary>A month and what is there when it ends.</summary>
/// <param name="Month">1 to 12, of the profile's year.</param>
/// <param name="Amount">The amount; below 0 if it is missing.</param>
public sealed record LowPointAnswer([property: WholeNumber] decimal Month, decimal Amount);

/// <summary>The bridge between what the year earns and what happens to its cash.</summary>
/// <param name="Change">Cash at the end less cash at the start.</param>
/// <param name="Parts">From the profit on, what adds to cash and what takes from it; they add up to the change.</param>
/// <param name="Difference">What the parts do not explain: 0.00.</param>
public sealed record ReconciledAnswer(decimal Change, IReadOnlyList<CashPartAnswer> Parts, decimal Difference);

/// <summary>A part of the bridge.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Amount">What it adds to cash; negative for what it takes.</param>
public sealed record CashPartAnswer(CashPartKind Name, decimal Amount);
