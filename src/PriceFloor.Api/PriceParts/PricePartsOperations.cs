using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.PriceParts;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class PricePartsOperations
{
    private static readonly Operation PriceParts = new("getPriceParts", "Prices", "Where each unit of a price goes",
        "What the buyer pays for a piece, in parts that add up to it: sales tax, what the channel takes, materials, the design's bench time split "
        + "into expenses, tax and household, and what is above the floor or short of it. As image/svg+xml a bar for each channel. Scope: read.")
    {
        Answer = typeof(PricePartsAnswer),
        Cases = PricePartsCases.PriceParts,
        OtherAnswers = [FormatExample.Drawing],
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapPriceParts(this RouteGroupBuilder v1)
    {
        v1.MapGet("/designs/{sku}/price-parts", PricePartsRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Svg).Tell(PriceParts);
        v1.MapGet("/designs/{sku}/price-parts.svg", PricePartsRoutes.Get).Needs(Scope.Read).Always(Format.Svg).Tell(PriceParts.As(Format.Svg));
    }
}
