using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.DesignBudgets;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class DesignBudgetCases
{
    private static readonly ExampleFolder s_files = new(typeof(DesignBudgetCases));

    /// <summary>Both ways round.</summary>
    public static readonly IReadOnlyList<MainCase> DesignBudget =
    [
        new("materials-given", "How many minutes are left for the bench.",
            s_files["computeDesignBudget.materials-given.request.json"], s_files["computeDesignBudget.materials-given.answer.json"]),
        new("minutes-given", "How much is left for materials.",
            s_files["computeDesignBudget.minutes-given.request.json"], s_files["computeDesignBudget.minutes-given.answer.json"]),
    ];
}
