using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Remedies;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class RemedyCases
{
    /// <summary>A price that does not hold.</summary>
    public static readonly IReadOnlyList<MainCase> Remedies =
    [
        new("below-floor", "A price below its floor.", null, Examples.Remedies) { At = new Dictionary<string, string> { ["price"] = "58.00" } },
    ];
}
