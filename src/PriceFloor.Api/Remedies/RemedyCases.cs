using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Remedies;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class RemedyCases
{
    private static readonly ExampleFolder s_files = new(typeof(RemedyCases));

    /// <summary>A price that does not hold.</summary>
    public static readonly IReadOnlyList<MainCase> Remedies =
    [
        new("below-floor", "A price below its floor.", null, s_files["getRemedies.below-floor.answer.json"])
        {
            At = new Dictionary<string, string> { ["price"] = "58.00" },
        },
    ];
}
