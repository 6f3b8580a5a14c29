using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.PriceLists;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class PriceListOperations
{
    private static readonly ExampleFolder s_files = new(typeof(PriceListOperations));

    private static readonly Operation PriceList = new("getPriceList", "Prices", "Every design with its prices",
        "Floor, target, listed price and verdict of each design in order of key, on one channel or on all; complete, or with limit a page at a time. "
        + "The ETag changes only when the list does, so a shop that polls gets 304 until something moves. As text/html a page to print, "
        + "as image/svg+xml (with a channel) a picture. Reveals no costs; a key with the scope read also learns what each listed price is short by, "
        + "and may sort by it. Scope: check.")
    {
        Answer = typeof(PriceListAnswer),
        AnswerExample = s_files["getPriceList.answer.json"],
        OtherAnswers =
        [
            new(Format.Csv, null, s_files["getPriceList.answer.csv"]),
            new(Format.Html, null, s_files["getPriceList.answer.html"]),
            FormatExample.Drawing,
        ],
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = "The list.", [304] = "The caller already has this list." },
        Problems = [ProblemTypes.UnknownReference],
    };

    public static void MapPriceLists(this RouteGroupBuilder v1)
    {
        v1.MapGet("/price-list", PriceListRoutes.Get).Needs(Scope.Check).Offer(Format.Json, Format.Csv, Format.Html, Format.Svg).Tell(PriceList);
        v1.MapGet("/price-list.html", PriceListRoutes.Get).Needs(Scope.Check).Always(Format.Html).Tell(PriceList.As(Format.Html));
        v1.MapGet("/price-list.svg", PriceListRoutes.Get).Needs(Scope.Check).Always(Format.Svg)
            .Tell(PriceList.As(Format.Svg) with { Needed = ["channel"] });
    }
}
