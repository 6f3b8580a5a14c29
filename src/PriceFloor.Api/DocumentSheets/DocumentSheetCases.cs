using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.DocumentSheets;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class DocumentSheetCases
{
    private static readonly ExampleFolder s_files = new(typeof(DocumentSheetCases));

    public static readonly IReadOnlyList<MainCase> PutSheet =
    [
        new("fees", "What a shop's card fee is now.", s_files["putSheet.fees.request.csv"], s_files["putSheet.fees.answer.json"])
        {
            Format = Format.Csv,
        },
    ];
}
