using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Designs;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class DesignCases
{
    private static readonly ExampleFolder s_files = new(typeof(DesignCases));

    /// <summary>The most common ways to give bench time, with and without materials.</summary>
    public static readonly IReadOnlyList<MainCase> Designs =
    [
        new("pieces-a-day", "Pieces a day, averaged over all working days.",
            s_files["design.pieces-a-day.request.json"], s_files["design.pieces-a-day.answer.json"])
        {
            At = new Dictionary<string, string> { ["sku"] = "RB-014" },
        },
        new("minutes", "Plain minutes for each piece started, of which some are lost.",
            s_files["design.minutes.request.json"], s_files["design.minutes.answer.json"])
        {
            At = new Dictionary<string, string> { ["sku"] = "ST-010" },
        },
        new("steps-and-batches",
            "Steps with a loss each, one of them a kiln load that must not be hurried; rejected pieces are sold as seconds.",
            s_files["design.steps-and-batches.request.json"], s_files["design.steps-and-batches.answer.json"])
        {
            At = new Dictionary<string, string> { ["sku"] = "ND-020" },
        },
        new("materials-from-the-profile",
            "Rod from the profile's price list with its waste, and a box at a price of its own; another name that shops list it under.",
            s_files["design.materials-from-the-profile.request.json"], s_files["design.materials-from-the-profile.answer.json"])
        {
            At = new Dictionary<string, string> { ["sku"] = "BD-030" },
        },
    ];

    /// <summary>One answer for every format.</summary>
    public static readonly IReadOnlyList<MainCase> DesignBatches =
    [
        new("array", "A JSON array.", s_files["putDesigns.array.request.json"], s_files["putDesigns.array.answer.json"]),
        new("lines", "A JSON object a line.",
            s_files["putDesigns.lines.request.ndjson"], s_files["putDesigns.lines.answer.json"])
        {
            Format = Format.Ndjson,
        },
        new("sheet", "A sheet: a column that it lacks is left as it is stored.",
            s_files["putDesigns.sheet.request.csv"], s_files["putDesigns.sheet.answer.json"])
        {
            Format = Format.Csv,
        },
    ];
}
