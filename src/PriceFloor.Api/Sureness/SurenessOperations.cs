using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Sureness;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class SurenessOperations
{
    private static readonly ExampleFolder s_files = new(typeof(SurenessOperations));

    private static readonly Operation Sureness = new("computeSureness", "Scenarios", "How sure is an answer?",
        "What ranges in place of guessed numbers make of the year, a floor and a price: the tenth, the middle and nine tenths of thousands of draws, "
        + "the price that holds in so many of them, and which number matters most. The draws are spread evenly and are the same on every machine. "
        + "All shares are of these ranges: they follow from your guesses. At most two such answers are computed at once. Scope: read.")
    {
        Answer = typeof(SurenessAnswer),
        RequestExample = s_files["computeSureness.request.json"],
        AnswerExample = s_files["computeSureness.answer.json"],
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapSureness(this RouteGroupBuilder v1) =>
        v1.MapPost("/sureness", SurenessRoutes.Post).AddEndpointFilter(new SurenessSlots()).Needs(Scope.Read).Tell(Sureness);
}
