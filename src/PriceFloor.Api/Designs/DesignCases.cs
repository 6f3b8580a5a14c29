using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Designs;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class DesignCases
{
    /// <summary>The four ways to tell bench time that are met most, with and without materials.</summary>
    public static readonly IReadOnlyList<MainCase> Designs =
    [
        new("pieces-a-day", "So many a day, averaged over all working days.", Examples.Design, Examples.StoredDesign)
        {
            At = new Dictionary<string, string> { ["sku"] = "RB-014" },
        },
        new("minutes", "Plain minutes for each piece started, of which some are lost.",
            """{"name":"Stud earrings","profile":"main","making":{"minutesPerPiece":45,"goodShare":0.9}}""", """
            {"key":"ST-010","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Stud earrings","profile":"main","aliases":[],"making":{"minutesPerPiece":45,"goodShare":0.9,"setupMinutes":0},"materials":[]}
            """) { At = new Dictionary<string, string> { ["sku"] = "ST-010" } },
        new("steps-and-batches",
            "Steps with losses of their own, one of them a kiln load that must not be hurried; rejected pieces are sold as seconds.",
            """{"name":"Net dish","profile":"workshop","making":{"steps":[{"name":"torch","handsOnMinutes":34,"goodShare":0.95},{"name":"anneal","handsOnMinutes":20,"batchSize":24,"goodShare":0.98,"mayBeHurried":false,"uses":"kiln"}],"setupMinutes":15,"runSize":12},"seconds":{"share":0.4,"price":11}}""",
            """
            {"key":"ND-020","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Net dish","profile":"workshop","aliases":[],"making":{"steps":[{"name":"torch","handsOnMinutes":34,"batchSize":1,"goodShare":0.95,"mayBeHurried":true},{"name":"anneal","handsOnMinutes":20,"batchSize":24,"goodShare":0.98,"mayBeHurried":false,"uses":"kiln"}],"goodShare":1,"setupMinutes":15,"runSize":12},"materials":[],"seconds":{"share":0.4,"price":11.00}}
            """) { At = new Dictionary<string, string> { ["sku"] = "ND-020" } },
        new("materials-from-the-profile",
            "Rod from the profile's price list with its waste, and a box at a price of its own; another name that shops list it under.",
            """{"name":"Round beads","profile":"workshop","aliases":["BD-030 / clear"],"making":{"minutesPerPiece":25},"materials":[{"material":"clear-rod","quantity":0.062,"wasteShare":0.08},{"name":"gift box","amount":1.55,"at":"finish"}]}""",
            """
            {"key":"BD-030","revision":1,"savedAt":"2027-01-02T09:00:00.000000Z","name":"Round beads","profile":"workshop","aliases":["BD-030 / clear"],"making":{"minutesPerPiece":25,"goodShare":1,"setupMinutes":0},"materials":[{"material":"clear-rod","quantity":0.062,"wasteShare":0.08,"batchSize":1,"at":"start"},{"wasteShare":0,"batchSize":1,"name":"gift box","amount":1.55,"at":"finish"}]}
            """) { At = new Dictionary<string, string> { ["sku"] = "BD-030" } },
    ];

    /// <summary>One answer for every format.</summary>
    public static readonly IReadOnlyList<MainCase> DesignBatches =
    [
        new("array", "A JSON array.", Examples.DesignBatch, Examples.DesignBatchAnswer),
        new("lines", "A JSON object a line.", Examples.DesignBatchLines, """
        {"items":[{"sku":"RB-014","result":"unchanged","revision":1}],"summary":{"created":0,"changed":0,"unchanged":1}}
        """) { Format = Format.Ndjson },
        new("sheet", "A sheet: a column that it lacks is left as it is stored.", Examples.DesignBatchSheet, """
        {"items":[{"sku":"RB-014","result":"unchanged","revision":1}],"summary":{"created":0,"changed":0,"unchanged":1}}
        """) { Format = Format.Csv },
    ];
}
