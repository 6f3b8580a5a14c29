using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.ListedPrices;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class ListedPriceCases
{
    /// <summary>One answer for every format.</summary>
    public static readonly IReadOnlyList<MainCase> ListingBatches =
    [
        new("array", "A JSON array.", Examples.ListingBatch, Examples.ListingBatchAnswer),
        new("lines", "A JSON object a line.", Examples.BatchLines, """
        {"items":[{"sku":"RB-014","channel":"web","result":"unchanged","revision":1}],"summary":{"created":0,"changed":0,"unchanged":1}}
        """) { Format = Format.Ndjson },
        new("sheet", "A sheet as a shop exports it.", Examples.BatchSheet, """
        {"items":[{"sku":"RB-014","channel":"web","result":"unchanged","revision":1}],"summary":{"created":0,"changed":0,"unchanged":1}}
        """) { Format = Format.Csv },
    ];
}
