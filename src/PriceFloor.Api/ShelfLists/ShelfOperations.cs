using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.ShelfLists;

/// <summary>The address of this folder, and its description in the contract.</summary>
public static class ShelfOperations
{
    private static readonly ExampleFolder s_files = new(typeof(ShelfOperations));

    private static readonly Operation Shelf = new("getShelf", "Evidence", "All designs of a profile beside each other",
        "A line for each design that the log has: what it sold and brought, what an hour at it earned, its share of the year's contribution and of "
        + "the bench hours, how fast it sells, what is on hand and how old, and one word that this suggests (keep, raise, make-faster, redesign, "
        + "fill-in, drop, wait) after what it rests on. Carriers are the fewest designs that bring 70 % of the contribution. Nothing is changed by "
        + "itself. Scope: read.")
    {
        Answer = typeof(ShelfAnswer),
        AnswerExample = s_files["getShelf.answer.json"],
        OtherAnswers = [new(Format.Csv, null, s_files["getShelf.answer.csv"])],
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = "The answer.", [304] = "The caller already has it." },
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute],
    };

    public static void MapShelf(this RouteGroupBuilder v1)
    {
        v1.MapGet("/shelf", ShelfRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Csv).Tell(Shelf);
    }
}
