using System.Text;
using System.Text.RegularExpressions;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>docs/your-sheets.md: its sheets make a studio as they stand there, and its notes and messages are what the service says.</summary>
public sealed partial class SheetPageTests
{
    private const string Page = "docs/your-sheets.md";

    private const string Small = "| sheet | headings | first rows |";

    [Fact]
    public async Task Every_sheet_that_there_is_has_its_line()
    {
        await using var studio = new Studio();
        var names = (await studio.Get("/v1/sheets")).Json.GetProperty("items").EnumerateArray()
            .Select(sheet => $"`{sheet.GetProperty("name").GetString()}` `{sheet.GetProperty("columns")[0].GetString()}`");
        Assert.Equal(names.Order(StringComparer.Ordinal),
            Rows("| sheet | a row for each | first column |").Select(row => $"{row[0]} {row[2]}").Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task The_small_sheets_make_a_studio_in_their_order()
    {
        await using var studio = await AStudio();
        var items = (await studio.Get("/v1/price-list")).Json.GetProperty("items").EnumerateArray();
        Assert.Equal(["shops 29.00", "web 58.00", "web 62.00"], items
            .Select(item => $"{item.GetProperty("channel").GetString()} {item.GetProperty("listedPrice").GetRawText()}")
            .Order(StringComparer.Ordinal));
        Assert.Equal("[]", (await studio.Get("/v1/designs/DROP-1/floor-price")).Json.GetProperty("warnings").GetRawText());
    }

    [Fact]
    public async Task A_machine_loses_the_months_of_its_first_year_and_then_whole_years()
    {
        await using var studio = await AStudio();
        Assert.Equal("187.50", await Lost()); // (3,200 - 200) / 8 x 6 / 12
        Assert.Equal(200, (await Put(studio, "profiles", "profile,yearStart\nmain,2028-01-01\n")).Status);
        Assert.Equal("375.00", await Lost()); // (3,200 - 200) / 8

        async Task<string> Lost() => (await studio.Get("/v1/profiles/main/requirement")).Json.GetProperty("depreciation").GetRawText();
    }

    [Fact]
    public async Task A_floor_rises_by_cents_and_a_price_by_steps_or_not_at_all()
    {
        await using var studio = await AStudio();
        Assert.Equal("18.41: shops 18.50, web 20.00", await Prices());
        Assert.Equal(200, (await Put(studio, "stock", "profile,material,unit,price\nmain,clear-rod,kg,40\n")).Status);
        Assert.Equal("18.55: shops 19.00, web 20.00", await Prices());

        async Task<string> Prices()
        {
            var floor = (await studio.Get("/v1/designs/DROP-1/floor-price")).Json;
            return $"{floor.GetProperty("floor").GetRawText()}: " + string.Join(", ", floor.GetProperty("channels").EnumerateArray()
                .Select(one => $"{one.GetProperty("channel").GetString()} {one.GetProperty("floorPrice").GetRawText()}"));
        }
    }

    [Fact]
    public async Task What_is_said_of_a_cell_is_what_the_page_shows()
    {
        await using var studio = await AStudio();
        var rows = Rows("| heading | cell | what the answer says |");
        Assert.Equal(5, rows.Count);
        foreach (var row in rows)
        {
            var cells = new Dictionary<string, string>
            {
                ["profile"] = "main",
                ["name"] = "Rent",
                ["amount"] = "5",
                ["per"] = "month",
                ["costKind"] = "",
            };
            cells[row[0].Trim('`')] = row[1];
            var errors = (await Put(studio, "expenses", $"{string.Join(',', cells.Keys)}\n{string.Join(',', cells.Values)}\n"))
                .IsProblem(422, row[0] == "`profile`" ? "unknown-reference" : "invalid-input").Json.GetProperty("errors");
            var error = Assert.Single(errors.EnumerateArray());
            Assert.Equal((row[0].Trim('`'), 2), (error.GetProperty("parameter").GetString(), error.GetProperty("line").GetInt32()));
            Assert.StartsWith(row[2], error.GetProperty("detail").GetString(), StringComparison.Ordinal);
        }
    }

    private static async Task<Studio> AStudio()
    {
        var studio = new Studio();
        foreach (var row in Rows(Small))
        {
            var lines = Code().Matches(row[2]).Select(match => match.Groups["text"].Value);
            var sent = await Put(studio, row[0].Trim('`'), $"{row[1].Trim('`')}\n{string.Concat(lines.Select(line => line + "\n"))}");
            Assert.True(sent.Status == 200, $"{row[0]}: {sent.Text}");
        }

        return studio;
    }

    private static Task<Answer> Put(Studio studio, string sheet, string text) =>
        studio.SendBytes("PUT", $"/v1/sheets/{sheet}", Encoding.UTF8.GetBytes(text), "text/csv");

    /// <summary>The rows of the page's table with this head.</summary>
    private static List<string[]> Rows(string head) =>
        [.. File.ReadLines(Repository.File(Page)).SkipWhile(line => line != head).Skip(2).TakeWhile(line => line.StartsWith('|'))
            .Select(line => line.Split('|')[1..^1].Select(cell => cell.Trim()).ToArray())];

    [GeneratedRegex("`(?<text>[^`]+)`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Code();
}
