using System.Text.Json;
using PriceFloor.Api.DocumentSheets;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;
using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace PriceFloor.Api.Workbooks;

/// <summary>The first sheet of a workbook: what each sheet and each heading is, in the words of the contract. Nobody reads it back.</summary>
internal static class WorkbookGuide
{
    public const string Sheet = "read me";

    private static readonly string[] s_headings = ["sheet", "heading", "a cell has", "what it says"];

    private static readonly string[] s_words =
    [
        "The whole studio. Change cells on the other sheets, save, and send the workbook back: either everything is stored, or nothing.",
        "A row belongs to the document in its first column. Rows of a list that you delete are gone from it; a document whose rows you delete stays.",
        "An empty cell gives the default back. Sheets and columns that you delete stay as they are stored. Formulas count by their results.",
        "A sheet of your own is not read if its name begins with _. This sheet is not read either.",
    ];

    public static async Task WriteAsync(Spreadsheet workbook, StyleId heading, IReadOnlyDictionary<string, string> explanations)
    {
        var options = new WorksheetOptions();
        foreach (var (column, width) in new[] { (1, 16), (2, 26), (3, 34), (4, 120) })
            options.Column(column).Width = width;
        await workbook.StartWorksheetAsync(Sheet, options);
        foreach (var words in s_words)
            await workbook.AddRowAsync([new Cell(words)]);
        await workbook.AddRowAsync([default]);
        await workbook.AddRowAsync([.. s_headings.Select(name => new Cell(name, heading))]);
        foreach (var sheet in SheetsOfDocuments.All)
        {
            await workbook.AddRowAsync([new Cell(sheet.Name, heading), new Cell(sheet.KeyColumn), new Cell("a key"),
                new Cell($"The rows are {sheet.About}; this is the key of the {sheet.KeyColumn} that a row belongs to.")]);
            foreach (var field in sheet.Fields)
                await workbook.AddRowAsync([default, new Cell(field.Name), new Cell(KindOf(field.About.Schema)),
                    new Cell(explanations.GetValueOrDefault($"{field.About.Type}.{field.About.Member}", ""))]);
        }
    }

    /// <summary>What the contract says of each member of each type, such as <c>Expense.amount</c>.</summary>
    public static async Task<IReadOnlyDictionary<string, string>> Explanations(IServiceProvider services)
    {
        var words = new Dictionary<string, string>
        {
            ["ListedPriceRow.channel"] = "Key of the channel.",
            ["ListedPriceRow.alias"] = "One of the design's other names, if the price is that name's own.",
            ["ListedPriceRow.price"] = "The listed price, in the channel's currency and with its decimals.",
        };
        using var contract = JsonDocument.Parse((await OpenApiPages.TextsAsync(services)).Json);
        foreach (var schema in contract.RootElement.GetProperty("components").GetProperty("schemas").EnumerateObject())
            if (schema.Value.TryGetProperty("properties", out var members))
                foreach (var member in members.EnumerateObject())
                    if (member.Value.TryGetProperty("description", out var description))
                        words[$"{schema.Name}.{member.Name}"] = Plain(description.GetString()!);
        return words;
    }

    private static string Plain(string words) => words.Length <= 1000 ? words : words[..1000];

    private static string KindOf(BodySchema schema) => schema switch
    {
        BodySchema.Number => "a number",
        BodySchema.Boolean => "TRUE or FALSE",
        BodySchema.Date => "a day",
        BodySchema.Choice choice => string.Join(", ", choice.Words),
        BodySchema.Array { Item: BodySchema.Text } => "names with | between them",
        BodySchema.Array => "a list in square brackets, as JSON",
        _ => "a text",
    };
}
