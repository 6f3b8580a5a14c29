using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.RunPrices;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class RunPricesOperations
{
    private static readonly ExampleFolder s_files = new(typeof(RunPricesOperations));

    private static readonly Operation RunPrices = new("getRunPrices", "Questions", "What a run of so many pieces must sell for",
        "Pieces of a design made for one order: one setup, whole kiln loads, everything sold. For each quantity the floor a piece, the floor total "
        + "on the channel, and the discount that the quantity really earns. As image/svg+xml a bar for each quantity. Scope: read.")
    {
        Answer = typeof(RunPricesAnswer),
        AnswerExample = s_files["getRunPrices.answer.json"],
        OtherAnswers = [FormatExample.Drawing],
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapRunPrices(this RouteGroupBuilder v1)
    {
        v1.MapGet("/designs/{sku}/run-prices", RunPricesRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Svg).Tell(RunPrices);
        v1.MapGet("/designs/{sku}/run-prices.svg", RunPricesRoutes.Get).Needs(Scope.Read).Always(Format.Svg).Tell(RunPrices.As(Format.Svg));
    }
}
