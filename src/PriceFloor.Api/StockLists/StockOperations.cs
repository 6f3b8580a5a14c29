using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.StockLists;

/// <summary>The address of this folder, and its description in the contract.</summary>
public static class StockOperations
{
    private static readonly Operation Stock = new("getStock", "Evidence", "Pieces on hand that are slow to sell, and the ways out",
        "The designs that have pieces older than asked, or with less than one chance in four to be sold within 180 days; how many are where and how "
        + "old; and what can be done with them: wait, mark down, take apart, sell as seconds, the way that brings most first. What they cost is "
        + "spent, so a price below the floor can be right. Nothing is changed by itself. Scope: read.")
    {
        Answer = typeof(StockAnswer),
        Cases = StockCases.Stock,
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = "The answer.", [304] = "The caller already has it." },
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute],
    };

    public static void MapStock(this RouteGroupBuilder v1) => v1.MapGet("/stock", StockRoutes.Get).Needs(Scope.Read).Tell(Stock);
}
