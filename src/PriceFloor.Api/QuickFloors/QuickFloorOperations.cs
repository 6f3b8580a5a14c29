using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.QuickFloors;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class QuickFloorOperations
{
    private static readonly ExampleFolder s_files = new(typeof(QuickFloorOperations));

    private static readonly Operation QuickFloor = new("computeQuickFloor", "Questions", "A first floor from eight numbers",
        "Floor, retail and take-home for the maker who has only eight numbers, and the full documents made from them, ready to be stored. "
        + "Not tax or legal advice. Scope: read.")
    {
        Answer = typeof(QuickFloorAnswer),
        RequestExample = s_files["computeQuickFloor.request.json"],
        AnswerExample = s_files["computeQuickFloor.answer.json"],
        Problems = [ProblemTypes.CannotCompute],
    };

    public static void MapQuickFloors(this RouteGroupBuilder v1)
    {
        v1.MapPost("/quick-floor", QuickFloorRoutes.Post).Needs(Scope.Read).Tell(QuickFloor);
    }
}
