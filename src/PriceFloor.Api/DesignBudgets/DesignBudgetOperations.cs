using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.DesignBudgets;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class DesignBudgetOperations
{
    private static readonly Operation DesignBudget = new("computeDesignBudget", "Questions", "What a new piece may take",
        "For a piece not yet designed and the price that the market pays: the bench minutes it may take with these materials, "
        + "or the materials it may use with these minutes, on the channel and on every other. Both are for a sold piece: "
        + "for a finished one multiply by soldShare. Scope: read.")
    {
        Answer = typeof(DesignBudgetAnswer),
        Cases = DesignBudgetCases.DesignBudget,
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapDesignBudgets(this RouteGroupBuilder v1)
    {
        v1.MapPost("/design-budgets", DesignBudgetRoutes.Post).Needs(Scope.Read).Tell(DesignBudget);
    }
}
