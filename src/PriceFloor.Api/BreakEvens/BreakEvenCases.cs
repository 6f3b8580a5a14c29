using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.BreakEvens;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class BreakEvenCases
{
    private static readonly ExampleFolder s_files = new(typeof(BreakEvenCases));

    /// <summary>At a price, and beside a plan.</summary>
    public static readonly IReadOnlyList<MainCase> BreakEven =
    [
        new("at-a-price", "How many must sell at this price.", null, s_files["getBreakEven.at-a-price.answer.json"])
        {
            At = new Dictionary<string, string> { ["price"] = "120.00" },
        },
        new("beside-a-plan", "And how far a plan of 700 pieces is above that.", null, s_files["getBreakEven.beside-a-plan.answer.json"])
        {
            At = new Dictionary<string, string> { ["price"] = "120.00", ["planned"] = "700" },
        },
    ];

    /// <summary>One line and several.</summary>
    public static readonly IReadOnlyList<MainCase> BreakEvenOfMix =
    [
        new("with-a-surplus", "One design, with money left over.",
            s_files["computeBreakEven.with-a-surplus.request.json"], s_files["computeBreakEven.with-a-surplus.answer.json"]),
        new("two-designs", "Three pendants for each pair of earrings.",
            s_files["computeBreakEven.two-designs.request.json"], s_files["computeBreakEven.two-designs.answer.json"]),
    ];
}
