using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Evidence;

/// <summary>The main cases of the operation of this folder: a test sends each and compares the answer.</summary>
public static class EvidenceCases
{
    private static readonly ExampleFolder s_files = new(typeof(EvidenceCases));

    private static readonly Dictionary<string, string> s_columns = new()
    {
        ["channel"] = "web",
        ["to"] = "2026-12-31",
        ["dateColumn"] = "Day",
        ["skuColumn"] = "Listing",
        ["piecesColumn"] = "Qty",
        ["priceColumn"] = "Paid each",
        ["listedColumn"] = "Asked",
        ["orderColumn"] = "Order no",
    };

    public static readonly IReadOnlyList<MainCase> Evidence =
    [
        new("year", "A year of sales and the bench book, in a form.",
            s_files["findEvidence.year.request.csv"], s_files["findEvidence.year.answer.json"])
        {
            Format = Format.Files,
            Parts = new Dictionary<string, Example>
            {
                [EvidenceQuery.MovementsPart] = s_files["findEvidence.year.request.csv"],
                [EvidenceQuery.BenchPart] = s_files["findEvidence.bench.request.csv"],
            },
            At = new Dictionary<string, string>(s_columns) { ["countsAsMade"] = "true", ["wholeDays"] = "true", ["at"] = "100" },
        },
        new("sales", "The sales alone, in columns with the names of fields.",
            s_files["findEvidence.sales.request.csv"], s_files["findEvidence.sales.answer.json"])
        {
            Format = Format.Csv,
            At = new Dictionary<string, string> { ["to"] = "2026-12-31" },
        },
    ];
}
