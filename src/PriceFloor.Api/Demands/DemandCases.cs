using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Demands;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class DemandCases
{
    private static readonly ExampleFolder s_files = new(typeof(DemandCases));

    public static readonly IReadOnlyList<MainCase> Demand =
    [
        new("year", "A design whose pieces were logged.", null, s_files["getDesignDemand.year.answer.json"])
        {
            At = new Dictionary<string, string> { ["to"] = "2027-03-31", ["price"] = "62.00", ["days"] = "56" },
        },
    ];
}
