using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Quotes;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class QuoteCases
{
    private static readonly ExampleFolder s_files = new(typeof(QuoteCases));

    /// <summary>A run with everything that a commission takes, and work without any piece.</summary>
    public static readonly IReadOnlyList<MainCase> Quotes =
    [
        new("goblets", "Thirty pieces of a design of their own, with hours, outside work, travel and a rush.",
            s_files["quote.goblets.request.json"], s_files["quote.goblets.answer.json"])
        {
            At = new Dictionary<string, string> { ["key"] = "Q-2027-014" },
        },
        new("repair", "A repair: hours and no piece.", s_files["quote.repair.request.json"], s_files["quote.repair.answer.json"])
        {
            At = new Dictionary<string, string> { ["key"] = "Q-2027-015" },
        },
    ];

    /// <summary>Nothing stored, and a stored design.</summary>
    public static readonly IReadOnlyList<MainCase> Figures =
    [
        new("stored-design", "Six of a stored design on a stored channel, without a price yet.",
            s_files["computeQuoteFigures.stored-design.request.json"], s_files["computeQuoteFigures.stored-design.answer.json"]),
        new("from-the-log", "Sixty of a stored design, as quickly as its bench log shows; assumed says what that is.",
            s_files["computeQuoteFigures.from-the-log.request.json"], s_files["computeQuoteFigures.from-the-log.answer.json"]),
        new("all-inline", "Nothing needs to be stored.",
            s_files["computeQuoteFigures.all-inline.request.json"], s_files["computeQuoteFigures.all-inline.answer.json"]),
    ];
}
