using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Statements;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class StatementCases
{
    private static readonly ExampleFolder s_files = new(typeof(StatementCases));

    /// <summary>One file of each format; a form with a field for each file is answered like its files.</summary>
    public static readonly IReadOnlyList<MainCase> Statements =
    [
        new("sheet", "A CSV file with named columns.",
            s_files["draftProfileFromStatements.sheet.request.csv"], s_files["draftProfileFromStatements.sheet.answer.json"])
        {
            Format = Format.Csv,
            At = new Dictionary<string, string> { ["account"] = "current" },
        },
        new("draft-alone", "The draft alone, to store as it is.",
            s_files["draftProfileFromStatements.sheet.request.csv"], s_files["draftProfileFromStatements.draft-alone.answer.json"])
        {
            Format = Format.Csv,
            At = new Dictionary<string, string> { ["account"] = "current", ["only"] = "draft" },
        },
        new("sheet", "The same file in a form.",
            s_files["draftProfileFromStatements.sheet.request.csv"], s_files["draftProfileFromStatements.sheet.answer.json"])
        {
            Format = Format.Files,
            At = new Dictionary<string, string> { ["account"] = "current" },
        },
        new("ofx", "An OFX file.",
            s_files["draftProfileFromStatements.ofx.request.ofx"], s_files["draftProfileFromStatements.ofx.answer.json"])
        {
            Format = Format.Ofx,
        },
        new("camt", "An ISO 20022 camt.053 file.",
            s_files["draftProfileFromStatements.camt.request.xml"], s_files["draftProfileFromStatements.camt.answer.json"])
        {
            Format = Format.Xml,
        },
    ];
}
