using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.LogLines;

/// <summary>The main cases of the operations of this folder: a test sends each and compares the answer.</summary>
public static class LogCases
{
    private static readonly ExampleFolder s_files = new(typeof(LogCases));

    /// <summary>A shop's plugin as JSON, its export as a sheet.</summary>
    public static readonly IReadOnlyList<MainCase> Movements =
    [
        new("shop", "An order of two lines, as a shop's plugin sends it after each sale.",
            s_files["appendMovements.shop.request.json"], s_files["appendMovements.shop.answer.json"])
        {
            At = new Dictionary<string, string> { ["source"] = "web-shop" },
        },
        new("lines", "The same order again, a line each: nothing changes.",
            s_files["appendMovements.lines.request.ndjson"], s_files["appendMovements.lines.answer.json"])
        {
            Format = Format.Ndjson,
            At = new Dictionary<string, string> { ["source"] = "web-shop" },
        },
        new("sheet", "A shop's export, with its own headings, a cancelled order and an unknown name.",
            s_files["appendMovements.sheet.request.csv"], s_files["appendMovements.sheet.answer.json"])
        {
            Format = Format.Csv,
            At = new Dictionary<string, string>
            {
                ["source"] = "web-shop",
                ["channel"] = "web",
                ["dateColumn"] = "Day",
                ["skuColumn"] = "Item",
                ["piecesColumn"] = "Quantity",
                ["priceColumn"] = "Price",
                ["orderColumn"] = "Order",
                ["discountColumn"] = "Order discount",
                ["refColumn"] = "Line id",
                ["statusColumn"] = "Status",
                ["cancelled"] = "cancelled",
            },
        },
    ];

    /// <summary>A maker's book of the bench.</summary>
    public static readonly IReadOnlyList<MainCase> Bench =
    [
        new("book", "Two batches and an hour of packing.", s_files["appendBenchLog.book.request.json"], s_files["appendBenchLog.book.answer.json"])
        {
            At = new Dictionary<string, string> { ["source"] = "bench-book", ["wholeDays"] = "true" },
        },
        new("lines", "Two of them again, a line each: nothing changes.",
            s_files["appendBenchLog.lines.request.ndjson"], s_files["appendBenchLog.lines.answer.json"])
        {
            Format = Format.Ndjson,
            At = new Dictionary<string, string> { ["source"] = "bench-book" },
        },
        new("sheet", "The same as a sheet.", s_files["appendBenchLog.sheet.request.csv"], s_files["appendBenchLog.sheet.answer.json"])
        {
            Format = Format.Csv,
            At = new Dictionary<string, string> { ["source"] = "bench-book" },
        },
        new("year", "A year's loads, whose good pieces count as made.",
            s_files["appendBenchLog.year.request.csv"], s_files["appendBenchLog.year.answer.json"])
        {
            Format = Format.Csv,
            At = new Dictionary<string, string> { ["source"] = "loads-2026", ["countsAsMade"] = "true" },
        },
    ];

    /// <summary>A page of a channel.</summary>
    public static readonly IReadOnlyList<MainCase> ListedMovements =
    [
        new("channel", "What moved on one channel.", null, s_files["listMovements.channel.answer.json"])
        {
            At = new Dictionary<string, string> { ["channel"] = "web", ["limit"] = "2" },
        },
    ];

    /// <summary>The entries of a design.</summary>
    public static readonly IReadOnlyList<MainCase> ListedBench =
    [
        new("design", "The batches of one design.", null, s_files["listBenchLog.design.answer.json"])
        {
            At = new Dictionary<string, string> { ["sku"] = "RB-014" },
        },
    ];
}
