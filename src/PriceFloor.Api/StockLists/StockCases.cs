using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.StockLists;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class StockCases
{
    private static readonly ExampleFolder s_files = new(typeof(StockCases));

    public static readonly IReadOnlyList<MainCase> Stock =
    [
        new("slow", "Pieces that are more than 300 days old, which could be taken apart.", null, s_files["getStock.slow.answer.json"])
        {
            At = new Dictionary<string, string>
            {
                ["olderThan"] = "300", ["to"] = "2027-03-31", ["days"] = "56", ["materialsKept"] = "0.6", ["reworkMinutes"] = "4",
            },
        },
    ];
}
