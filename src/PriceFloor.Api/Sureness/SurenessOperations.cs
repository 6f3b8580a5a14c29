using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Sureness;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class SurenessOperations
{
    private static readonly ExampleFolder s_files = new(typeof(SurenessOperations));

    private static readonly Operation Sureness = new("computeSureness", "Scenarios", "How sure is an answer?",
        "What ranges in place of guessed numbers make of the year, a floor, a price and a plan: the tenth, the middle and nine tenths of thousands "
        + "of draws, the price that holds in so many of them, how often the plan closes, and which number matters most. For a quote or a line of the "
        + "plan what it is worth to know a number before taking it. The draws are spread evenly and are the same on every machine. All shares are of "
        + "these ranges: they follow from your guesses. At most two such answers are computed at once. As image/svg+xml the numbers by swing. "
        + "Scope: read.")
    {
        Answer = typeof(SurenessAnswer),
        Cases = SurenessCases.Sureness,
        OtherAnswers = [FormatExample.Drawing],
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapSureness(this RouteGroupBuilder v1)
    {
        var slots = new SurenessSlots(); // for both addresses together
        v1.MapPost("/sureness", SurenessRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Read).Offer(Format.Json, Format.Svg).Tell(Sureness);
        v1.MapPost("/sureness.svg", SurenessRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Read).Always(Format.Svg)
            .Tell(Sureness.AsDrawing(s_files["computeSurenessSvg.request.json"]));
    }
}
