using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.YearPlans;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class YearPlanCases
{
    private static readonly ExampleFolder s_files = new(typeof(YearPlanCases));

    /// <summary>A year that closes and one that does not.</summary>
    public static readonly IReadOnlyList<MainCase> YearPlan =
    [
        new("closes", "Enough is sold.", s_files["computeYearPlan.closes.request.json"], s_files["computeYearPlan.closes.answer.json"]),
        new("falls-short", "Two designs, and still too little.",
            s_files["computeYearPlan.falls-short.request.json"], s_files["computeYearPlan.falls-short.answer.json"]),
    ];

    /// <summary>Both goals.</summary>
    public static readonly IReadOnlyList<MainCase> BestPlan =
    [
        new("maximum-surplus", "The largest surplus.",
            s_files["computeBestPlan.maximum-surplus.request.json"], s_files["computeBestPlan.maximum-surplus.answer.json"]),
        new("fewest-hours", "The fewest bench hours that still close the year.",
            s_files["computeBestPlan.fewest-hours.request.json"], s_files["computeBestPlan.fewest-hours.answer.json"]),
    ];
}
