using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.LineSheets;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class LineSheetOperations
{
    private static readonly ExampleFolder s_files = new(typeof(LineSheetOperations));

    private static readonly Operation LineSheet = new("getLineSheet", "Prices", "What buyers of a channel may be shown",
        "The designs listed on a channel with what the buyer pays: for shops (wholesale) with a suggested retail price, for a gallery with the share "
        + "that it keeps, for a stall the retail prices alone; then the smallest order and the terms, if the channel says them. "
        + "No floor, no cost; for a key with read, the JSON warns of prices below their floor and of prices at retail that undercut shops. "
        + "As text/html a page to print, as text/csv a sheet. The ETag changes only when the sheet does. Scope: check.")
    {
        Answer = typeof(LineSheetAnswer),
        AnswerExample = s_files["getLineSheet.answer.json"],
        OtherAnswers =
        [
            new(Format.Csv, null, s_files["getLineSheet.answer.csv"]),
            new(Format.Html, null, s_files["getLineSheet.answer.html"]),
        ],
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = "The line sheet.", [304] = "The caller already has it." },
        Problems = [ProblemTypes.UnknownReference],
    };

    public static void MapLineSheets(this RouteGroupBuilder v1)
    {
        v1.MapGet("/line-sheet", LineSheetRoutes.Get).Needs(Scope.Check).Offer(Format.Json, Format.Csv, Format.Html).Tell(LineSheet);
        v1.MapGet("/line-sheet.html", LineSheetRoutes.Get).Needs(Scope.Check).Always(Format.Html).Tell(LineSheet.As(Format.Html));
    }
}
