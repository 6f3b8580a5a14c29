using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.YearPlans;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class YearPlanOperations
{
    private static readonly Operation YearPlan = new("computeYearPlan", "Questions", "Does a year of these pieces close?",
        "Whether these numbers of pieces carry the year, by how much, the hours and loads they take, "
        + "the order in which to spend bench time, materials used and materials bought, and each line's verdict. Scope: read.")
    {
        Answer = typeof(YearPlanAnswer),
        Cases = YearPlanCases.YearPlan,
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    private static readonly Operation BestPlan = new("computeBestPlan", "Questions", "What should the year be made of?",
        "Whole pieces of each line between its minimum and what the market takes, within the bench hours less those kept back and within every "
        + "limited capacity: the largest surplus, or the fewest hours that still close the year. With seasons or work what is sold by a month "
        + "must be made by then, from the first month on. Exact: if proven is true no other whole pieces do better; "
        + "each answer is checked against its limits and says which of them bind and what one more hour or load would be worth. Scope: read.")
    {
        Answer = typeof(YearPlanAnswer),
        Cases = YearPlanCases.BestPlan,
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapYearPlans(this RouteGroupBuilder v1)
    {
        v1.MapPost("/year-plans", YearPlanRoutes.Post).Needs(Scope.Read).Tell(YearPlan);
        v1.MapPost("/year-plans/best", YearPlanRoutes.Best).Needs(Scope.Read).Tell(BestPlan);
    }
}
