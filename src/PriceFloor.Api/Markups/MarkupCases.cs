using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Markups;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class MarkupCases
{
    private static readonly ExampleFolder s_files = new(typeof(MarkupCases));

    /// <summary>Two figures give the rest; chains both ways; tax; discounts.</summary>
    public static readonly IReadOnlyList<MainCase> Markups =
    [
        new("back-from-retail", "From the buyer's price back to the maker's.",
            s_files["computeMarkups.back-from-retail.request.json"], s_files["computeMarkups.back-from-retail.answer.json"]),
        new("from-wholesale-to-retail", "From the maker's price to the buyer's, through a distributor and a shop that doubles.",
            s_files["computeMarkups.from-wholesale-to-retail.request.json"], s_files["computeMarkups.from-wholesale-to-retail.answer.json"]),
        new("two-of-five", "A cost and a margin give the rest; with the workings, enough to redo it by hand.",
            s_files["computeMarkups.two-of-five.request.json"], s_files["computeMarkups.two-of-five.answer.json"])
        {
            At = new Dictionary<string, string> { ["workings"] = "true" },
        },
        new("with-sales-tax", "A price that holds the tax: markup and margin are before it.",
            s_files["computeMarkups.with-sales-tax.request.json"], s_files["computeMarkups.with-sales-tax.answer.json"]),
        new("discounts", "A series of trade discounts and the single one that equals it.",
            s_files["computeMarkups.discounts.request.json"], s_files["computeMarkups.discounts.answer.json"]),
    ];
}
