using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.ListedPrices;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class ListedPriceCases
{
    private static readonly ExampleFolder s_files = new(typeof(ListedPriceCases));

    /// <summary>One answer for every format.</summary>
    public static readonly IReadOnlyList<MainCase> ListingBatches =
    [
        new("array", "A JSON array.", s_files["putListedPrices.array.request.json"], s_files["putListedPrices.array.answer.json"]),
        new("lines", "A JSON object a line.",
            s_files["putListedPrices.lines.request.ndjson"], s_files["putListedPrices.lines.answer.json"])
        {
            Format = Format.Ndjson,
        },
        new("sheet", "A sheet as a shop exports it.",
            s_files["putListedPrices.sheet.request.csv"], s_files["putListedPrices.sheet.answer.json"])
        {
            Format = Format.Csv,
        },
    ];
}
