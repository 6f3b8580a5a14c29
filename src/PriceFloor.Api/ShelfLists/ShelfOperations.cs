using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.ShelfLists;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class ShelfOperations
{
    private static readonly ExampleFolder s_files = new(typeof(ShelfOperations));

    private static readonly Operation Shelf = new("getShelf", "Evidence", "All designs of a profile beside each other",
        "A line for each design that the log has: what it sold and brought, what an hour at it earned, its share of the year's contribution and of "
        + "the bench hours, how fast it sells, what is on hand and how old, and one word that this suggests (keep, raise, make-faster, redesign, "
        + "fill-in, drop, wait) after what it rests on. Carriers are the fewest designs that bring 70 % of the contribution. Nothing is changed by "
        + "itself. As image/svg+xml each design's share of the contribution beside its share of the hours, as text/html a page to print. "
        + "Scope: read.")
    {
        Answer = typeof(ShelfAnswer),
        AnswerExample = s_files["getShelf.answer.json"],
        OtherAnswers =
        [
            new(Format.Csv, null, s_files["getShelf.answer.csv"]), FormatExample.Drawing, new(Format.Html, null, s_files["getShelf.answer.html"]),
        ],
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = "The answer.", [304] = "The caller already has it." },
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CannotCompute],
    };

    public static void MapShelf(this RouteGroupBuilder v1)
    {
        v1.MapGet("/shelf", ShelfRoutes.Get).Needs(Scope.Read).Offer(Format.Json, Format.Csv, Format.Svg, Format.Html).Tell(Shelf);
        v1.MapGet("/shelf.svg", ShelfRoutes.Get).Needs(Scope.Read).Always(Format.Svg).Tell(Shelf.As(Format.Svg));
        v1.MapGet("/shelf.html", ShelfRoutes.Get).Needs(Scope.Read).Always(Format.Html).Tell(Shelf.As(Format.Html));
    }
}
