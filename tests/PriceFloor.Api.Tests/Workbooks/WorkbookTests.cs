using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.Workbooks;

/// <summary>The whole studio in one workbook: fetched, edited in a spreadsheet, sent back.</summary>
public sealed class WorkbookTests
{
    [Fact]
    public async Task What_comes_back_unedited_changes_nothing()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/reading-rules/main", """{"rules":[{"textMatches":"=(rod|frit), \"x\"","paid":"out","least":0.5,"to":"business"}]}""");
        var (file, tag) = await studio.Workbook();
        var stored = await studio.Send(file);
        Assert.Equal(200, stored.Status);
        Assert.All(stored.Json.GetProperty("items").EnumerateArray(), item => Assert.Equal("unchanged", item.GetProperty("result").GetString()));
        Assert.True(stored.Json.GetProperty("summary").GetProperty("unchanged").GetInt32() > 5);
        Assert.Equal(tag, (await studio.Workbook()).Tag);
        Assert.Equal(file, (await studio.Workbook()).File); // the same bytes for the same studio
        Assert.Equal(304, (await studio.Get(Book.Path, null, ("If-None-Match", tag))).Status);
    }

    [Fact]
    public async Task Another_library_reads_numbers_as_numbers_and_days_as_days()
    {
        await using var studio = await AStudio();
        var book = Book.Read((await studio.Workbook()).File);
        Assert.Equal(["profile", "name", "amount", "per", "times", "costKind", "tracedTo", "deductible"], book["expenses"][0].Take(8));
        var rent = book["expenses"][1];
        Assert.Equal(("main", "=Bench rent", 540.5, false), (rent[0], rent[1]!.ToString()!.TrimStart('\''), rent[2], rent[7]));
        Assert.StartsWith("'", (string)rent[1]!, StringComparison.Ordinal); // nobody's spreadsheet runs it
        Assert.Equal(new DateTime(2025, 4, 1), book["equipment"][1][Array.IndexOf(book["equipment"][0], "inService")]);
        Assert.Equal(["RB-014", "web", null, 58d, null, null], book["prices"][1]);
    }

    [Fact]
    public async Task The_first_sheet_explains_every_heading()
    {
        await using var studio = await AStudio();
        var book = Book.Read((await studio.Workbook()).File);
        Assert.Equal("read me", book.Keys.First());
        foreach (var sheet in (await studio.Get("/v1/sheets")).Json.GetProperty("items").EnumerateArray())
            foreach (var column in sheet.GetProperty("columns").EnumerateArray())
                Assert.Contains(book["read me"], row => row.Length > 3 && (string?)row[1] == column.GetString() && row[3]?.ToString()?.Length > 5);
    }

    [Fact]
    public async Task One_cell_changes_one_document()
    {
        await using var studio = await AStudio();
        var (file, _) = await studio.Workbook();
        var stored = await studio.Send(Book.With(file, "<v>540.5</v>", "<v>600</v>"));
        Assert.Equal(["main changed 2"], Changed(stored));
        Assert.Equal(600, (await studio.Get("/v1/profiles/main")).Json.GetProperty("expenses")[0].GetProperty("amount").GetDecimal());
    }

    [Fact]
    public async Task A_document_of_many_sheets_gets_one_revision()
    {
        await using var studio = await AStudio();
        var stored = await studio.Send(Book.Of(
            ("stock", ["profile|material|unit|price", "main|clear-rod|kg|42.56", "main|kiln-kwh|kWh|0.21"]),
            ("expenses", ["profile|name|amount|per", "main|Rent|700|month"]),
            ("profiles", ["profile|studioName", "main|Example Flamework"])));
        Assert.Equal(["main changed 2"], Changed(stored));
        var year = (await studio.Get("/v1/profiles/main")).Json;
        Assert.Equal(("Example Flamework", 42.56m), (year.GetProperty("studioName").GetString(),
            year.GetProperty("materials")[0].GetProperty("price").GetDecimal()));
    }

    [Fact]
    public async Task A_material_can_be_renamed_everywhere_at_once()
    {
        await using var studio = await AStudio();
        var (file, _) = await studio.Workbook();
        var parts = Book.Parts(file);
        var stored = await studio.Send(Book.Zip(parts.ToDictionary(part => part.Key,
            part => part.Value.Replace("<t>clear-rod</t>", "<t>clear-rod-7mm</t>", StringComparison.Ordinal))));
        Assert.Equal(["main changed 2", "RB-014 changed 2"], Changed(stored));
        var narrowed = (await studio.Send(Book.Of(("stock", ["profile|material|unit|price", "main|kiln-kwh|kWh|0.21"])))).IsProblem(409, "in-use");
        Assert.Equal("stock", narrowed.Json.GetProperty("errors")[0].GetProperty("sheet").GetString());
    }

    [Fact]
    public async Task A_profile_a_channel_a_design_and_a_price_are_made_together()
    {
        await using var studio = new Studio();
        var stored = await studio.Send(Book.Of(
            ("prices", ["sku|channel|price", "DROP|web|58"]),
            ("designs", ["sku|profile|piecesPerDay", "DROP|main|4"]),
            ("channels", ["channel|sells|currency", "web|retail|USD"]),
            ("fees", ["channel|name|rate|fixed|of", "web|card|0.024|0.25|paid"]),
            ("profiles", ["profile|currency|calendarWeeksPerYear|calendarDaysPerWeek|calendarHoursPerDay", "main|USD|50|5|8"]),
            ("expenses", ["profile|name|amount|per", "main|Rent|24000|year"])));
        Assert.Equal("""{"created":4,"changed":0,"unchanged":0}""", stored.Json.GetProperty("summary").GetRawText());
        // 24000 a year over 50 x 5 x 4 = 1000 pieces: 24.00 each before fees
        Assert.Equal(24m, (await studio.Get("/v1/designs/DROP/floor-price")).Json.GetProperty("floor").GetDecimal());
    }

    [Fact]
    public async Task All_faults_are_told_with_sheet_and_cell_and_nothing_is_stored()
    {
        await using var studio = await AStudio();
        var refused = (await studio.Send(Book.Of(
            ("expenses", ["", "profile|name|amount|per", "", "main|Rent|-1|month", "main|Gas|$30|fortnightly"]),
            ("fees", ["channel|colour", "web|blue"]),
            ("stock", ["profile|material|unit|price", "main|clear-rod|kg|38", "main|clear-rod|kg|39", "main|kiln-kwh|kWh|1"]),
            ("expences", ["profile", "main"]),
            ("_mine", ["anything", "=goes:1"]),
            ("plan-lines", ["plan|sku|channel|units", "none|RB-014|web|4"]),
            ("channels", ["channel|sells|currency", "web|retail|USD", "web|retail|USD"])))).IsProblem(422, "invalid-input");
        Assert.Equal(
            ["expenses C4 out-of-range", "expenses C5 not-a-number", "expenses D5 not-one-of", "fees B1 unknown-column", "stock B3 duplicate",
                "expences  unknown-sheet", "plan-lines A2 unknown-plan", "channels A3 duplicate"],
            refused.Json.GetProperty("errors").EnumerateArray().Select(error => $"{error.GetProperty("sheet").GetString()} "
                + $"{(error.TryGetProperty("cell", out var cell) ? cell.GetString() : "")} {error.GetProperty("code").GetString()}"));
        Assert.Equal(1, (await studio.Get("/v1/profiles/main")).Json.GetProperty("revision").GetInt64());
    }

    [Fact]
    public async Task Rows_that_are_deleted_are_gone_and_documents_that_are_not_named_stay()
    {
        await using var studio = await AStudio();
        var stored = await studio.Send(Book.Of(("channels", ["channel", "web"]), ("fees", ["channel|name|rate"])));
        Assert.Equal(["web changed 2"], Changed(stored));
        Assert.Empty((await studio.Get("/v1/channels/web")).Json.GetProperty("fees").EnumerateArray());
        Assert.Equal("""{"created":0,"changed":0,"unchanged":0}""",
            (await studio.Send(Book.Of(("fees", ["channel|name|rate"])))).Json.GetProperty("summary").GetRawText());
        Assert.Equal(1, (await studio.Get("/v1/designs/RB-014")).Json.GetProperty("revision").GetInt64());
    }

    [Fact]
    public async Task With_If_Match_nothing_is_stored_over_what_has_changed_since()
    {
        await using var studio = await AStudio();
        var (file, tag) = await studio.Workbook();
        await studio.Has("/v1/channels/web", """{"sells":"retail","currency":"USD"}""");
        (await studio.Send(file, null, "", ("If-Match", tag))).IsProblem(412, "stale-revision");
        Assert.Equal(200, (await studio.Send(file, null, "", ("If-Match", (await studio.Workbook()).Tag))).Status);
    }

    [Fact]
    public async Task A_key_of_one_profile_sees_and_writes_only_its_own()
    {
        await using var studio = await AStudio();
        await studio.Has("/v1/profiles/other", Sample.SmallProfile);
        await studio.Has("/v1/designs/OTHER", """{"profile":"other","making":{"piecesPerDay":4}}""");
        var made = await studio.Post("/v1/keys", """{"name":"mine","scopes":["read","write"],"profiles":["main"]}""");
        using var mine = studio.ClientWith(made.Json.GetProperty("key").GetString());
        var (file, _) = await studio.Workbook(mine);
        var book = Book.Read(file);
        Assert.DoesNotContain(book["profiles"], row => (string?)row[0] == "other");
        Assert.DoesNotContain(book["designs"], row => (string?)row[0] == "OTHER");
        Assert.Equal(200, (await studio.Send(file, mine)).Status); // channels are in it, and are as they were
        (await studio.Send(Book.Of(("channels", ["channel|name", "web|New"])), mine)).IsProblem(403, "key-not-allowed");
        (await studio.Send(Book.Of(("expenses", ["profile|name|amount|per", "other|Rent|1|year"])), mine)).IsProblem(422, "invalid-input");
        Assert.Equal(1, (await studio.Get("/v1/profiles/other")).Json.GetProperty("revision").GetInt64());
        foreach (var scope in new[] { "check", "verdict", "prices" })
        {
            using var client = await studio.ClientFor(scope);
            (await studio.Get(Book.Path, client)).IsProblem(403, "key-not-allowed");
            (await studio.Send(file, client)).IsProblem(403, "key-not-allowed");
        }
    }

    private static IEnumerable<string> Changed(Answer stored) => stored.Json.GetProperty("items").EnumerateArray()
        .Where(item => item.GetProperty("result").GetString() != "unchanged")
        .Select(item => $"{item.GetProperty("key").GetString()} {item.GetProperty("result").GetString()} {item.GetProperty("revision").GetInt64()}");

    internal static async Task<Studio> AStudio()
    {
        var studio = new Studio();
        await studio.Has("/v1/profiles/main", """
            {"currency":"USD","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0.65},
            "expenses":[{"name":"=Bench rent","amount":540.5,"per":"month","costKind":"rent","deductible":false}],
            "equipment":[{"name":"Kiln","cost":3200,"salvage":200,"inService":"2025-04-01","depreciation":{"method":"straight-line","lifeYears":8}}],
            "materials":[{"material":"clear-rod","unit":"kg","price":38},{"material":"kiln-kwh","unit":"kWh","price":0.21}],
            "limits":[{"name":"kiln","loadsPerYear":240}]}
            """);
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        await studio.Has("/v1/channels/web", Sample.Shop);
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":58}""");
        return studio;
    }
}
