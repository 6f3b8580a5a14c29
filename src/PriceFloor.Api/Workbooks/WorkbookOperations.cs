using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Workbooks;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class WorkbookOperations
{
    private static readonly ExampleFolder s_files = new(typeof(WorkbookOperations));

    private static readonly Operation GetStudio = new("getStudio", "Sheets", "The whole studio as one workbook",
        "A workbook (.xlsx) with a sheet for each of /v1/sheets, and a first sheet that explains every heading. Numbers are numbers, days are "
        + "days, and no text runs as a formula. The ETag changes only when the studio does. A key that is limited to profiles sees "
        + "theirs. Scope: read.")
    {
        OtherAnswers = [new(Format.Xlsx, null)],
        HasTag = true,
        Good = new Dictionary<int, string> { [200] = "The workbook.", [304] = "The caller already has it." },
        Problems = [ProblemTypes.CannotCompute],
    };

    private static readonly Operation PostStudio = new("postStudio", "Sheets", "Store a workbook, all or nothing",
        "What is changed in the workbook is stored together: one revision for each document that changed, whatever the number of its sheets. Rows "
        + "that are deleted are gone from their list; documents whose rows are deleted stay. Sheets and columns that it does not have stay as they "
        + "are stored. Either everything is stored, or nothing is and every fault is reported with its sheet and cell. Formulas count by the results "
        + "that the spreadsheet saved. With If-Match, nothing is stored if the studio has changed since the workbook was fetched. Scope: write.")
    {
        Answer = typeof(WorkbookWriteAnswer),
        AnswerExample = s_files["postStudio.answer.json"],
        Bodies = [new(Format.Xlsx, null)],
        BodyWords = "The workbook, as a spreadsheet saves it.",
        Problems = [ProblemTypes.StaleRevision, ProblemTypes.UnknownReference, ProblemTypes.InUse, ProblemTypes.CurrencyMismatch,
            ProblemTypes.KeyNotAllowed],
    };

    public static void MapWorkbooks(this RouteGroupBuilder v1, BatchSlots slots)
    {
        v1.MapGet("/studio.xlsx", WorkbookRoutes.Get).Needs(Scope.Read).Always(Format.Xlsx).Tell(GetStudio);
        v1.MapPost("/studio.xlsx", WorkbookRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Write).Tell(PostStudio);
    }
}
