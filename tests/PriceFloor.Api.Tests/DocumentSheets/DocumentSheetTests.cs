using System.Text;
using Xunit;

namespace PriceFloor.Api.Tests.DocumentSheets;

/// <summary>What is stored, as sheets that come back: with a pencil and a spreadsheet, without JSON.</summary>
public sealed class DocumentSheetTests
{
    private static readonly string[] s_all =
        ["profiles", "expenses", "equipment", "household", "other-income", "helpers", "limits", "stock", "designs", "steps", "materials", "channels",
            "fees", "prices", "reading-rules", "plan-lines"];

    [Fact]
    public async Task Glass_12_percent_dearer_takes_one_sheet_there_and_back()
    {
        await using var studio = await AStudio();
        var before = (await studio.Get("/v1/designs/RB-014/floor-price")).Json.GetProperty("materials").GetDecimal();
        var sheet = await studio.Get("/v1/sheets/stock");
        Assert.Equal("profile,material,unit,price\r\nmain,clear-rod,kg,38\r\nmain,kiln-kwh,kWh,0.21\r\n", sheet.Text);
        var stored = await Send(studio, "stock", sheet.Text.Replace(",38\r", ",42.56\r", StringComparison.Ordinal)); // 38 * 1.12
        Assert.Equal("""{"items":[{"key":"main","result":"changed","revision":2}],"summary":{"created":0,"changed":1,"unchanged":0}}""", stored.Text);
        // 0.062 kg over 1 - 0.08, 4.56 dearer: 0.3073... for each piece started; 1/(0.95 * 0.98) = 1.0741... are started for one that is good, and
        // all of these sell at 0.9 of them and 0.95 of the studio's
        var more = 0.062m / 0.92m * 4.56m / (0.95m * 0.98m) / (0.9m);
        var after = (await studio.Get("/v1/designs/RB-014/floor-price")).Json.GetProperty("materials").GetDecimal();
        Assert.InRange(after - before, more - 0.01m, more + 0.01m);
    }

    [Fact]
    public async Task What_comes_back_unedited_changes_nothing()
    {
        await using var studio = await AStudio();
        foreach (var name in s_all)
            foreach (var dialect in new[] { "", "?dialect=semicolon" })
            {
                var sheet = await studio.Get($"/v1/sheets/{name}{dialect}");
                Assert.Equal((name, 200), (name, sheet.Status));
                Assert.True(sheet.Text.Split("\r\n").Length > 2, name + " has no rows");
                var stored = await Send(studio, name + dialect, sheet.Text);
                Assert.Equal((name, 200), (name, stored.Status));
                Assert.All(stored.Json.GetProperty("items").EnumerateArray(),
                    item => Assert.Equal("unchanged", item.GetProperty("result").GetString()));
            }
    }

    [Fact]
    public async Task A_refusal_counts_every_row_that_it_lists()
    {
        await using var studio = await AStudio();
        await studio.Has("/v1/designs/ST-1", Sample.Pendant);
        var refused = await Send(studio, "prices", "sku,channel,price\nRB-014,none,1\nST-1,none,1\n");
        Assert.Equal((422, 2), (refused.Status, refused.Json.GetProperty("errors").GetArrayLength()));
        Assert.StartsWith("2 values break a rule", refused.Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_sheet_is_listed_with_its_columns()
    {
        await using var studio = await AStudio();
        var list = (await studio.Get("/v1/sheets")).Json.GetProperty("items").EnumerateArray().ToList();
        Assert.Equal(s_all, list.Select(sheet => sheet.GetProperty("name").GetString()));
        foreach (var sheet in list)
            Assert.Equal(string.Join(',', sheet.GetProperty("columns").EnumerateArray().Select(column => column.GetString())),
                (await studio.Get($"/v1/sheets/{sheet.GetProperty("name").GetString()}")).Text.Split("\r\n")[0]);
    }

    [Fact]
    public async Task Documents_that_a_sheet_does_not_name_stay()
    {
        await using var studio = await AStudio();
        Assert.Equal(200, (await Send(studio, "fees", "channel,name,rate\nweb,card,0.03\n")).Status);
        Assert.Equal("[0.03]", Rates((await studio.Get("/v1/channels/web")).Json));
        Assert.Equal("[0.05]", Rates((await studio.Get("/v1/channels/fair")).Json));
    }

    [Fact]
    public async Task A_column_that_a_sheet_does_not_have_stays_as_it_is()
    {
        await using var studio = await AStudio();
        Assert.Equal(200, (await Send(studio, "expenses", "profile,name,amount,per\nmain,Rent,2100,month\nmain,Course,90,year\n")).Status);
        var expenses = (await studio.Get("/v1/profiles/main")).Json.GetProperty("expenses");
        Assert.Equal(("rent", false, 2100m), (expenses[0].GetProperty("costKind").GetString(), expenses[0].GetProperty("deductible").GetBoolean(),
            expenses[0].GetProperty("amount").GetDecimal()));
        Assert.False(expenses[1].TryGetProperty("costKind", out _)); // a new line has none
    }

    [Fact]
    public async Task A_spreadsheet_may_write_TRUE_and_leave_cells_empty()
    {
        await using var studio = await AStudio();
        var stored = await Send(studio, "expenses",
            "profile,name,amount,per,times,costKind,tracedTo,deductible\nmain,Rent,2000,month,,rent,,TRUE\n");
        Assert.Equal(200, stored.Status);
        Assert.True((await studio.Get("/v1/profiles/main")).Json.GetProperty("expenses")[0].GetProperty("deductible").GetBoolean());
    }

    [Fact]
    public async Task A_row_of_a_new_key_makes_a_channel_and_an_empty_stall_is_none()
    {
        await using var studio = await AStudio();
        var stored = await Send(studio, "channels", "channel,sells,currency,stallCost,stallPieces\nmarket,retail,USD,,\nweb,retail,USD,100,20\n");
        Assert.Equal(["market created", "web changed"], stored.Json.GetProperty("items").EnumerateArray()
            .Select(item => $"{item.GetProperty("key").GetString()} {item.GetProperty("result").GetString()}"));
        Assert.False((await studio.Get("/v1/channels/market")).Json.TryGetProperty("stall", out _));
        Assert.Equal(20, (await studio.Get("/v1/channels/web")).Json.GetProperty("stall").GetProperty("pieces").GetDecimal());
        Assert.NotEmpty((await studio.Get("/v1/channels/web")).Json.GetProperty("fees").EnumerateArray()); // fees have a sheet of their own
    }

    [Fact]
    public async Task All_faults_are_told_at_their_cells_and_nothing_is_stored()
    {
        await using var studio = await AStudio();
        var refused = (await Send(studio, "expenses", "profile,name,amount,per\nmain,Rent,-1,month\nmain,Gas,$30,fortnightly\n"))
            .IsProblem(422, "invalid-input");
        Assert.Equal(["amount 2 11", "amount 3 10", "per 3 14"], refused.Json.GetProperty("errors").EnumerateArray()
            .Select(error => $"{error.GetProperty("parameter").GetString()} {error.GetProperty("line")} {error.GetProperty("column")}"));
        Assert.Equal(1, (await studio.Get("/v1/profiles/main")).Json.GetProperty("revision").GetInt64());
    }

    [Fact]
    public async Task A_rule_between_rows_is_told_at_its_row()
    {
        await using var studio = await AStudio();
        var refused = (await Send(studio, "stock", "profile,material,unit,price\nmain,clear-rod,kg,38\nmain,clear-rod,kg,39\nmain,kiln-kwh,kWh,1\n"))
            .IsProblem(422, "invalid-input").Json.GetProperty("errors")[0];
        Assert.Equal(("material", 3, "duplicate"), (refused.GetProperty("parameter").GetString(), refused.GetProperty("line").GetInt32(),
            refused.GetProperty("code").GetString()));
    }

    [Fact]
    public async Task A_material_that_a_design_uses_cannot_be_left_out()
    {
        await using var studio = await AStudio();
        (await Send(studio, "stock", "profile,material,unit,price\nmain,kiln-kwh,kWh,0.21\n")).IsProblem(409, "in-use");
        Assert.Equal(1, (await studio.Get("/v1/profiles/main")).Json.GetProperty("revision").GetInt64());
    }

    [Fact]
    public async Task Columns_and_documents_that_do_not_exist_are_named()
    {
        await using var studio = await AStudio();
        Assert.Equal(["colour"], (await Send(studio, "fees", "channel,colour\nweb,blue\n")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["channel"], (await Send(studio, "fees", "name,rate\ncard,0.1\n")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["channel"], (await Send(studio, "fees", "channel,name,rate\nWEB,card,0.1\n")).IsProblem(422, "unknown-reference").Pointers);
        var none = (await studio.Get("/v1/sheets/rent")).IsProblem(404, "not-found");
        Assert.Contains("there are profiles, expenses, equipment", none.Text, StringComparison.Ordinal);
        (await studio.Put("/v1/sheets/fees", "[]")).IsProblem(415, "media-type");
    }

    [Fact]
    public async Task With_If_Match_nothing_is_stored_over_what_has_changed_since()
    {
        await using var studio = await AStudio();
        var sheet = await studio.Get("/v1/sheets/fees");
        Assert.Equal(200, (await Send(studio, "fees", "channel,name,rate\nweb,card,0.04\n")).Status);
        (await Send(studio, "fees", sheet.Text, ("If-Match", sheet["ETag"]!))).IsProblem(412, "stale-revision");
        var now = await studio.Get("/v1/sheets/fees");
        Assert.Equal(200, (await Send(studio, "fees", sheet.Text, ("If-Match", now["ETag"]!))).Status);
        Assert.Equal(304, (await studio.Get("/v1/sheets/fees", null, ("If-None-Match", sheet["ETag"]!))).Status);
    }

    [Fact]
    public async Task It_can_be_asked_as_of_another_time()
    {
        await using var studio = await AStudio();
        var before = (await studio.Get("/v1/sheets/fees")).Text;
        studio.Clock.Advance(TimeSpan.FromDays(2));
        await Send(studio, "fees", "channel,name,rate\nweb,card,0.04\n");
        Assert.Equal(before, (await studio.Get("/v1/sheets/fees?asOf=2027-01-03T00:00:00Z")).Text);
    }

    private static string Rates(System.Text.Json.JsonElement channel) =>
        $"[{string.Join(',', channel.GetProperty("fees").EnumerateArray().Select(fee => fee.GetProperty("rate").GetRawText()))}]";

    private static Task<Answer> Send(Studio studio, string name, string sheet, params (string, string)[] headers) =>
        studio.SendBytes("PUT", "/v1/sheets/" + name, Encoding.UTF8.GetBytes(sheet), "text/csv", headers: headers);

    private static async Task<Studio> AStudio()
    {
        var studio = new Studio();
        await studio.Has("/v1/profiles/main", """
            {"currency":"USD","calendar":{"weeksPerYear":48,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0.65},
            "expenses":[{"name":"Rent","amount":2000,"per":"month","costKind":"rent","deductible":false}],
            "equipment":[{"name":"Kiln","cost":3200,"salvage":200,"inService":"2025-04-01","depreciation":{"method":"straight-line","lifeYears":8}},
              {"name":"Torch","cost":900,"depreciation":{"method":"percentages","percentages":[0.5,0.5]}}],
            "household":[{"name":"Home rent","amount":1450,"per":"month","businessShare":0.12}],
            "otherIncome":[{"name":"Evening classes","amount":280,"per":"month","kind":"taxable","daysPerYear":12}],
            "materials":[{"material":"clear-rod","unit":"kg","price":38},{"material":"kiln-kwh","unit":"kWh","price":0.21}],
            "limits":[{"name":"kiln","loadsPerYear":240}],"helpers":[{"name":"Saturday help","benchHoursPerYear":120}]}
            """);
        await studio.Has("/v1/reading-rules/main",
            """{"name":"Ours","rules":[{"textMatches":"=(rod|frit), \"x\"","paid":"out","least":0.5,"to":"business","costKind":"materials"}]}""");
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        await studio.Has("/v1/channels/web", Sample.Shop);
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":58}""");
        await studio.Has("/v1/plans/gifts", Sample.Plan);
        await studio.Has("/v1/channels/fair",
            """
            {"name":" Fair, outdoors ","sells":"retail","currency":"USD","fees":[{"name":"=reader","rate":0.05,"of":"paid"}],
            "stall":{"cost":195,"pieces":30,"timesAYear":8}}
            """);
        return studio;
    }
}
