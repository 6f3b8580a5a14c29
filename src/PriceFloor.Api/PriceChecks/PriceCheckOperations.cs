using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.PriceChecks;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class PriceCheckOperations
{
    private static readonly Operation PriceCheck = new("checkPrice", "Prices", "Does a price carry its part of the year?",
        "The verdict on a price. Scope verdict: the verdict and carriesItsShare; check: also floor and target price; read: also what reveals costs.")
    {
        Answer = typeof(PriceCheckAnswer),
        Cases = PriceCheckCases.PriceCheck,
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    private static readonly Operation PriceCheckByQuery = PriceCheck with
    {
        Id = "checkPriceByQuery",
        Cases = [],
        AnswerExample = PriceCheckCases.PriceCheck[0].Answer,
        Summary = "Does a price carry its part of the year? (by query)",
    };

    public static void MapPriceChecks(this RouteGroupBuilder v1)
    {
        v1.MapGet("/price-checks", PriceCheckRoutes.Get).Needs(Scope.Verdict).Tell(PriceCheckByQuery);
        v1.MapPost("/price-checks", PriceCheckRoutes.Post).Needs(Scope.Verdict).Tell(PriceCheck);
    }
}
