using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.BreakEvens;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class BreakEvenOperations
{
    private static readonly Operation BreakEven = new("getBreakEven", "Questions", "How many must sell",
        "The pieces of one design at one price (the listed one by default) that carry the whole year, and whether there are enough bench hours; "
        + "as image/svg+xml a chart. Scope: read.")
    {
        Answer = typeof(BreakEvenAnswer),
        Cases = BreakEvenCases.BreakEven,
        OtherAnswers = [FormatExample.Drawing],
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    private static readonly Operation BreakEvenOfMix = new("computeBreakEven", "Questions", "How many of each must sell",
        "The pieces of each line of a mix, sold in the given proportions, that carry the year and a wanted surplus. Scope: read.")
    {
        Answer = typeof(MixBreakEvenAnswer),
        Cases = BreakEvenCases.BreakEvenOfMix,
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapBreakEvens(this RouteGroupBuilder v1)
    {
        v1.MapGet("/designs/{sku}/break-even", BreakEvenRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Svg).Tell(BreakEven);
        v1.MapGet("/designs/{sku}/break-even.svg", BreakEvenRoutes.Get).Needs(Scope.Read).Always(Format.Svg).Tell(BreakEven.As(Format.Svg));
        v1.MapPost("/break-even", BreakEvenRoutes.Post).Needs(Scope.Read).Tell(BreakEvenOfMix);
    }
}
