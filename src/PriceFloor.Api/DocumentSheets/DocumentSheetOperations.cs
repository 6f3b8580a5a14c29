using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class DocumentSheetOperations
{
    private static readonly ExampleFolder s_files = new(typeof(DocumentSheetOperations));

    private static readonly Operation Sheets = new("listSheets", "Sheets", "The sheets of stored documents",
        "What can be fetched, edited in a spreadsheet and sent back at /v1/sheets/{sheet}, and the columns of each. Scope: read.")
    {
        Answer = typeof(SheetListAnswer),
        AnswerExample = s_files["listSheets.answer.json"],
    };

    private static readonly Operation GetSheet = new("getSheet", "Sheets", "A list of stored documents as a sheet",
        "Every line of that list in all documents that the key sees, a row each, in order of document; the first column has the document's key. "
        + "Edit it in a spreadsheet and send it back with PUT. The ETag changes only when the sheet does. Scope: read.")
    {
        OtherAnswers = [new(Format.Csv, null, s_files["getSheet.answer.csv"])],
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = "The sheet.", [304] = "The caller already has it." },
        Problems = [ProblemTypes.NotFound],
    };

    private static readonly Operation PutSheet = new("putSheet", "Sheets", "Store a sheet, all or nothing",
        "The rows replace that list in each document that the sheet names; documents that it does not name stay. A row of a new key in the sheets "
        + "of channels and of reading rules makes one. A column that the sheet does not have stays as it is in the stored line of the same name. "
        + "Either everything is stored, or nothing is and every fault is reported with its line and column. With If-Match, nothing is "
        + "stored if the sheet has changed since it was fetched. Scope: write.")
    {
        Answer = typeof(SheetWriteAnswer),
        Bodies = [new(Format.Csv, null)],
        Cases = DocumentSheetCases.PutSheet,
        Problems = [ProblemTypes.NotFound, ProblemTypes.StaleRevision, ProblemTypes.UnknownReference, ProblemTypes.InUse],
    };

    public static void MapDocumentSheets(this RouteGroupBuilder v1, BatchSlots slots)
    {
        v1.MapGet("/sheets", DocumentSheetRoutes.List).Needs(Scope.Read).Tell(Sheets);
        v1.MapGet("/sheets/{sheet}", DocumentSheetRoutes.Get).Needs(Scope.Read).Always(Format.Csv).Tell(GetSheet);
        v1.MapPut("/sheets/{sheet}", DocumentSheetRoutes.Put).AddEndpointFilter(slots).Needs(Scope.Write).Tell(PutSheet);
    }
}
