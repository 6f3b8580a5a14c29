using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.FloorHistories;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class FloorHistoryOperations
{
    private static readonly ExampleFolder s_files = new(typeof(FloorHistoryOperations));

    private static readonly Operation FloorHistory = new("getFloorHistory", "Prices", "A design's floors over time",
        "Floor, target and listed price of a design on a channel at each moment at which one of them moved, "
        + "calculated from the revisions of that time, with the documents that moved it and, in words, "
        + "what changed in them. As image/svg+xml three lines over time with the last moves. Scope: read.")
    {
        Answer = typeof(FloorHistoryAnswer),
        AnswerExample = s_files["getFloorHistory.answer.json"],
        OtherAnswers = [FormatExample.Drawing],
        Problems = [ProblemTypes.UnknownReference],
    };

    public static void MapFloorHistories(this RouteGroupBuilder v1)
    {
        v1.MapGet("/designs/{sku}/floor-history", FloorHistoryRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Svg).Tell(FloorHistory);
        v1.MapGet("/designs/{sku}/floor-history.svg", FloorHistoryRoutes.Get).Needs(Scope.Read).Always(Format.Svg).Tell(FloorHistory.As(Format.Svg));
    }
}
