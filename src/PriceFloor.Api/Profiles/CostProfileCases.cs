using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Profiles;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class CostProfileCases
{
    private static readonly ExampleFolder s_files = new(typeof(CostProfileCases));

    /// <summary>A year with few figures, with each form of tax, and with what designs draw on.</summary>
    public static readonly IReadOnlyList<MainCase> Profiles =
    [
        new("few-figures", "A year in two lines.", s_files["profile.few-figures.request.json"], s_files["profile.few-figures.answer.json"])
        {
            At = new Dictionary<string, string> { ["key"] = "main" },
        },
        new("flat-tax", "A flat share of the profit set aside for tax, savings in the household, a room at home used as the studio.",
            s_files["profile.flat-tax.request.json"], s_files["profile.flat-tax.answer.json"])
        {
            At = new Dictionary<string, string> { ["key"] = "flat-tax" },
        },
        new("levies", "Tax by your own tables: a contribution of which half is deducted, then a tax with an allowance and bands; a least pay.",
            s_files["profile.levies.request.json"], s_files["profile.levies.answer.json"])
        {
            At = new Dictionary<string, string> { ["key"] = "levies" },
        },
        new("workshop", "A stock price list, kiln loads, equipment that wears out, paid help, some pieces that never sell.",
            s_files["profile.workshop.request.json"], s_files["profile.workshop.answer.json"])
        {
            At = new Dictionary<string, string> { ["key"] = "workshop" },
        },
    ];
}
