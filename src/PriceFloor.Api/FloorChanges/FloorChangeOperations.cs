using PriceFloor.Api.Access;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.FloorChanges;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class FloorChangeOperations
{
    private static readonly ExampleFolder s_files = new(typeof(FloorChangeOperations));

    private static readonly Operation FloorChanges = new("getFloorChanges", "Prices", "Which floors moved",
        "Each design and channel whose floor or target price moved since a time or since the last answer, old and new, whether the listed price "
        + "still carries its share, and (with read) the documents and fields that moved it. With limit an answer is cut, and next continues it. "
        + "A follower of next misses nothing and gets nothing twice; after a restore or a forgotten document next is refused (unknown-cursor), "
        + "and the follower begins again without since. Scope: check.")
    { Answer = typeof(FloorChangesAnswer), AnswerExample = s_files["getFloorChanges.answer.json"] };

    public static void MapFloorChanges(this RouteGroupBuilder v1)
    {
        v1.MapGet("/floor-changes", FloorChangeRoutes.Get).Needs(Scope.Check).Tell(FloorChanges);
    }
}
