using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Statements;

/// <summary>The addresses of this folder, and their descriptions in the contract.</summary>
public static class StatementOperations
{
    private static readonly Operation Statements = new("draftProfileFromStatements", "Statements", "Draft a cost profile from statements",
        "One or more files as multipart/form-data (each field's name is the account's name if the file does not give one), "
        + "or one file as the body: CSV with named columns, OFX 1 or 2, ISO 20022 camt.053, recognised by content. Sorted by the reading rules into "
        + "a draft that can be stored as it is; with only=draft the answer is that draft alone. "
        + "Every line is counted once: placed, unplaced, paired, duplicate or left out. "
        + "How a sheet is written is said by a part of the form with its file's name and \".layout\" (a StatementLayout as JSON), else by the stored "
        + "layout whose key is that name, else by the query. A sheet named cash-book is the maker's own book of cash: beside day, text and money it "
        + "may have the columns to, cost kind, name, business share, traced to and income kind, which say what a line is as a reading rule would. "
        + "The service neither stores nor logs the files. Not tax advice. Scope: write; rules and against name stored documents and need read too.")
    {
        Answer = typeof(StatementAnswer),
        AnswerOtherwise = typeof(CostProfile),
        Cases = StatementCases.Statements,
        Bodies = [new(Format.Csv, null), new(Format.Files, null), new(Format.Ofx, null), new(Format.Xml, null)],
        BodyWords = "The files: a form with a field for each (and, where needed, a field NAME.layout for a sheet named NAME), "
            + "or one of them as the whole body. The format is recognised by the content.",
        Problems = [ProblemTypes.UnknownReference, ProblemTypes.CurrencyMismatch, ProblemTypes.CannotCompute],
    };

    public static void MapStatements(this RouteGroupBuilder v1, BatchSlots slots)
    {
        v1.MapPost("/statements", StatementRoutes.Post).AddEndpointFilter(slots).Needs(Scope.Write).Tell(Statements);
    }
}
