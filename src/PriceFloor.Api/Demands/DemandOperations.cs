using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Demands;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class DemandOperations
{
    private static readonly Operation Demand = new("getDesignDemand", "Evidence", "How often a design is ordered, and what to ask for it",
        "Orders a week from the log, in the light of the profile's other designs on the channel; runs of one price; whether the last change of price "
        + "paid; how buyers answer to price; what to expect; the price that brings most, the next step towards it, and how many to make. It is what "
        + "happened together, not why: fashion and season ride along. Nothing is changed by itself. Scope: read.")
    {
        Answer = typeof(DemandAnswer),
        Cases = DemandCases.Demand,
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = "The answer.", [304] = "The caller already has it." },
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute],
    };

    public static void MapDemands(this RouteGroupBuilder v1) =>
        v1.MapGet("/designs/{sku}/demand", DemandRoutes.Get).Needs(Scope.Read).Tell(Demand);
}
