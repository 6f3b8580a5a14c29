using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Remedies;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class RemedyOperations
{
    private static readonly Operation Remedies = new("getRemedies", "Questions", "What would fix a price",
        "Each single change that lets a price carry its part of the year, with its figure before and after, or the reason why it cannot; "
        + "and one proposal that spreads the gap. Time that safety depends on is never offered; weeks over 48 hours are flagged, "
        + "never advised. Scope: read.")
    {
        Answer = typeof(RemediesAnswer),
        Cases = RemedyCases.Remedies,
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapRemedies(this RouteGroupBuilder v1)
    {
        v1.MapGet("/designs/{sku}/remedies", RemedyRoutes.Get).Needs(Scope.Read).Tell(Remedies);
    }
}
