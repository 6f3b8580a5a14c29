using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.WhatIfs;

/// <summary>The main cases of a what-if: a test sends each and compares the answer.</summary>
public static class WhatIfCases
{
    private static readonly ExampleFolder s_files = new(typeof(WhatIfCases));

    public static readonly IReadOnlyList<MainCase> WhatIfs =
    [
        new("side-by-side", "Three scenarios, and all of them together.",
            s_files["computeWhatIfs.side-by-side.request.json"], s_files["computeWhatIfs.side-by-side.answer.json"]),
        new("review", "A price review: the plan, what alone would close it, what holding prices costs, and the steps in which they rise.",
            s_files["computeWhatIfs.review.request.json"], s_files["computeWhatIfs.review.answer.json"]),
    ];
}
