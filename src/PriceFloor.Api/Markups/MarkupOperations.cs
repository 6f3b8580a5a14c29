using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Markups;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class MarkupOperations
{
    private static readonly Operation Markups = new("computeMarkups", "Questions", "Markup, margin, chains and discounts",
        "Any two of cost, price, markup, margin and profit give the rest; a chain goes from maker to buyer or back; "
        + "a series of discounts has one equivalent. Scope: read.")
    { Answer = typeof(MarkupAnswer), Cases = MarkupCases.Markups, Problems = [ProblemTypes.CannotCompute] };

    public static void MapMarkups(this RouteGroupBuilder v1)
    {
        v1.MapPost("/markups", MarkupRoutes.Post).Needs(Scope.Read).Tell(Markups);
    }
}
