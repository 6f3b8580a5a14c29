using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.FloorPrices;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class FloorPriceOperations
{
    private static readonly Operation FloorPrice = new("getFloorPrice", "Prices", "The lowest price of a design",
        "What one sold piece must bring in, by itself and on every stored channel with its selling time, the floor and target price there, and one "
        + "price for every retail channel on which the design is listed. The floor holds only if piecesPerYear are made and sold. Scope: read.")
    { Answer = typeof(FloorPriceAnswer), Cases = FloorPriceCases.FloorPrice, Problems = [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute] };

    private static readonly Operation WhatIf = new("computeFloorPrice", "Prices", "What if: a floor from inline documents",
        "The same answer for a profile, a design and channels that come with the request or are named by key. Nothing is stored. Scope: read.")
    { Answer = typeof(FloorPriceAnswer), Cases = FloorPriceCases.WhatIf, Problems = [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute] };

    public static void MapFloorPrices(this RouteGroupBuilder v1)
    {
        v1.MapGet("/designs/{sku}/floor-price", FloorPriceRoutes.Get).Needs(Scope.Read).Tell(FloorPrice);
        v1.MapPost("/floor-prices", FloorPriceRoutes.Post).Needs(Scope.Read).Tell(WhatIf);
    }
}
