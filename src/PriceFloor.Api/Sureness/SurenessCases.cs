using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Sureness;

/// <summary>The main cases of how sure an answer is: a test sends each and compares the answer.</summary>
public static class SurenessCases
{
    private static readonly ExampleFolder s_files = new(typeof(SurenessCases));

    public static readonly IReadOnlyList<MainCase> Sureness =
    [
        new("price", "A price, and which guess matters most for it.",
            s_files["computeSureness.price.request.json"], s_files["computeSureness.price.answer.json"]),
        new("plan", "A plan, and one of its lines to make or drop.",
            s_files["computeSureness.plan.request.json"], s_files["computeSureness.plan.answer.json"]),
    ];
}
