using System.Text;
using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.DocumentSheets;

/// <summary>What somebody writes into sheets who has only read the pages: it works, or the answer says what to write.</summary>
public sealed class NewcomerSheetTests
{
    [Theory]
    [InlineData("minutesPerPiece")]
    [InlineData("piecesPerDay")]
    [InlineData("piecesPerBenchDay")]
    public async Task A_design_of_steps_is_made_by_sheets_alone(string way)
    {
        await using var studio = await AStudio();
        Assert.Equal(200, (await Designs(studio, $"sku,name,profile,{way}\nDROP-1,Drop,main,5\n")).Status);
        Assert.Equal(200, (await Send(studio, "steps",
            "sku,name,handsOnMinutes,batchSize,mayBeHurried\nDROP-1,torch,34,1,yes\nDROP-1,anneal,20,20,no\n")).Status);
        Assert.Equal(200, (await Send(studio, "materials", "sku,name,amount,at\nDROP-1,rod,2.50,torch\nDROP-1,gift box,1.55,finish\n")).Status);
        var making = (await studio.Get("/v1/designs/DROP-1")).Json.GetProperty("making");
        Assert.False(making.TryGetProperty(way, out _));
        Assert.Equal(["torch 34 True", "anneal 20 False"], making.GetProperty("steps").EnumerateArray().Select(step =>
            $"{step.GetProperty("name").GetString()} {step.GetProperty("handsOnMinutes")} {step.GetProperty("mayBeHurried").GetBoolean()}"));
        // 34 + 20 / 20 = 35 minutes = 0.5833 hours
        Assert.Equal(0.5833m, (await studio.Get("/v1/designs/DROP-1/floor-price")).Json.GetProperty("benchHours").GetDecimal());
    }

    [Fact]
    public async Task A_design_without_bench_time_is_told_in_the_words_of_the_sheet()
    {
        await using var studio = await AStudio();
        var refused = (await Designs(studio, "sku,name,profile\nDROP-1,Drop,main\nDROP-2,Drop,main\n")).IsProblem(422, "invalid-input");
        Assert.Equal([2, 3], Lines(refused));
        Assert.All(Details(refused), detail => Assert.Matches("minutesPerPiece, piecesPerDay and piecesPerBenchDay.*sheet steps", detail));
    }

    [Theory]
    [InlineData("fees", "channel,name,rate\nweb,card,%5\n", "rate is \"%5\"; write it as a share")]
    [InlineData("fees", "channel,name,rate\nweb,card,120%\n", "rate is \"120%\"; a share is at least 0% and at most 100%")]
    [InlineData("expenses", "profile,name,amount,per,costKind\nmain,Kiln,900,year,equipment\n",
        "^costKind is \"equipment\". It is probably \"depreciation\": .*sheet `equipment`, and .* must be one of advertising, car-and-travel, ")]
    [InlineData("designs", "sku,aliases\nRB-014,\"[Pendant blue]\"\n", "^The cell aliases is not a list.*\\[\"Pendant blue\"\\]")]
    [InlineData("fees", "channel,name,rate\nweb,card,x\n", "rate is \"x\"; that is not a number")]
    [InlineData("prices", "sku,channel,price\nPendant blue,web,58\n", "the design's own key in this column and the name in the column alias")]
    [InlineData("steps", "sku,name,handsOnMinutes,mayBeHurried\nRB-014,torch,30,perhaps\n", "true or false, or yes or no")]
    [InlineData("fees", "channel;name;rate\nweb;card;0,5\n", "dialect=semicolon")]
    [InlineData("fees", "channel\tname\trate\nweb\tcard\t0.5\n", "separated by tabs here: save it as CSV")]
    [InlineData("equipment", "profile,name,inService\nmain,Kiln,2/1/2027\n", "^inService is \"2/1/2027\"; a day is written 2027-02-28.*YYYY-MM-DD")]
    public async Task What_is_wrong_in_a_cell_is_told_with_what_to_write(string sheet, string rows, string told)
    {
        await using var studio = await AStudio();
        Assert.Contains(Details((await Send(studio, sheet, rows)).IsProblem(422, "invalid-input")), detail =>
            Regex.IsMatch(detail, told, RegexOptions.None, TimeSpan.FromSeconds(5)));
    }

    [Theory]
    [InlineData("2027/4/1")]
    [InlineData("2027.04.01")]
    [InlineData("1-Apr-27")]
    [InlineData("1 April 2027")]
    [InlineData("\"April 1, 2027\"")]
    public async Task A_day_that_a_spreadsheet_has_rewritten_is_read_if_it_can_be_read_in_one_way_only(string day)
    {
        await using var studio = await AStudio();
        Assert.Equal(200, (await Send(studio, "equipment",
            $"profile,name,cost,inService,depreciationMethod,depreciationLifeYears\nmain,Kiln,3200,{day},straight-line,8\n")).Status);
        Assert.Equal("2027-04-01",
            (await studio.Get("/v1/profiles/main")).Json.GetProperty("equipment")[0].GetProperty("inService").GetString());
    }

    [Fact]
    public async Task A_free_column_that_was_emptied_does_no_harm_and_one_that_was_not_is_told()
    {
        await using var studio = await AStudio();
        Assert.Equal(200, (await Send(studio, "fees", "channel,name,rate,,\nweb,card,3%,,\n")).Status);
        Assert.Equal(200, (await Designs(studio, "sku,name,\nRB-014,River drop,\n")).Status);
        foreach (var refused in new[]
        {
            await Send(studio, "fees", "channel,name,rate,,\nweb,card,3%,,0.034\n"),
            await Designs(studio, "sku,name,,\nRB-014,River drop,,note\n"),
        })
            Assert.Equal(["This column has no heading; give it one of the sheet, or delete what is in it."],
                Details(refused.IsProblem(422, "invalid-input")));
    }

    [Fact]
    public async Task Headings_may_begin_with_a_capital_and_a_row_without_a_key_is_told()
    {
        await using var studio = await AStudio();
        Assert.Equal(200, (await Send(studio, "fees", "Channel,Name,RATE\nweb,card,3%\n")).Status);
        Assert.Equal(["channel is empty; every row says which channel it belongs to."],
            Details((await Send(studio, "fees", "channel,name,rate\n,card,3%\n")).IsProblem(422, "unknown-reference")));
    }

    [Fact]
    public async Task A_sheet_of_designs_names_the_dialect_and_a_share_too()
    {
        await using var studio = await AStudio();
        Assert.Contains("dialect=semicolon", (await Designs(studio, "sku;name;profile\nDROP-1;Drop;main\n")).IsProblem(422, "invalid-input").Text,
            StringComparison.Ordinal);
        Assert.Contains("goodShare is \\u0022%95\\u0022; write it as a share",
            (await Designs(studio, "sku,profile,minutesPerPiece,goodShare\nDROP-1,main,5,%95\n"))
            .IsProblem(422, "invalid-input").Text.Replace("\\\"", "\\u0022", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_several_bad_rows_every_one_is_told()
    {
        await using var studio = await AStudio();
        var rows = string.Concat(Enumerable.Range(1, 8).Select(i => $"RB-014,step {i},5,perhaps\n"));
        Assert.Equal([2, 3, 4, 5, 6, 7, 8, 9],
            Lines((await Send(studio, "steps", "sku,name,handsOnMinutes,mayBeHurried\n" + rows)).IsProblem(422, "invalid-input")));
    }

    [Fact]
    public async Task An_empty_price_takes_no_listing_away_and_says_how_to()
    {
        await using var studio = await AStudio();
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":58}""");
        foreach (var refused in new[]
        {
            await Send(studio, "prices", "sku,channel,price\nRB-014,web,\n"),
            await studio.SendBytes("POST", "/v1/listed-prices/batch", Encoding.UTF8.GetBytes("sku,channel,price\nRB-014,web,\n"), "text/csv"),
        })
            Assert.EndsWith("That takes no listing away: leave the row out to keep it as it is, or send DELETE to "
                + "/v1/designs/{sku}/prices/{channel}.", Assert.Single(Details(refused.IsProblem(422, "invalid-input"))), StringComparison.Ordinal);
        Assert.Equal(200, (await studio.Get("/v1/designs/RB-014/prices/web")).Status);
    }

    [Fact]
    public async Task Words_may_be_written_with_spaces_and_rows_may_be_empty()
    {
        await using var studio = await AStudio();
        Assert.Equal(200, (await Send(studio, "expenses",
            "profile,name,amount,per,costKind\n,,,,\nmain,Fairs,900,year,Shows and stalls\n,,,,\n\n,,\n"))
            .Status);
        Assert.Equal("shows-and-stalls", (await studio.Get("/v1/profiles/main")).Json.GetProperty("expenses")[0].GetProperty("costKind").GetString());
        Assert.Equal(200, (await Send(studio, "reading-rules", "rules,textHas,to,costKind\nmine,market,business,shows and stalls\n")).Status);
        Assert.Equal(200, (await Designs(studio, "sku,profile,minutesPerPiece\nDROP-1,main,5\n,,\n")).Status);
    }

    [Theory]
    [InlineData("1.69%", "", "0.0169")]
    [InlineData("20 %", "", "0.2")]
    [InlineData("12.5%", "", "0.125")]
    [InlineData("2.5%", "", "0.025")]
    [InlineData("1,69%", "?dialect=semicolon", "0.0169")]
    public async Task A_percentage_in_a_cell_is_the_exact_share(string cell, string query, string share)
    {
        await using var studio = await AStudio();
        var mark = query.Length > 0 ? ';' : ',';
        Assert.Equal(200, (await studio.SendBytes("PUT", "/v1/sheets/fees" + query,
            Encoding.UTF8.GetBytes($"channel{mark}name{mark}rate\nweb{mark}card{mark}{cell}\n"), "text/csv")).Status);
        var fee = (await studio.Get("/v1/channels/web")).Json.GetProperty("fees")[0].GetProperty("rate").GetRawText();
        Assert.Equal(decimal.Parse(share, System.Globalization.CultureInfo.InvariantCulture),
            decimal.Parse(fee, System.Globalization.CultureInfo.InvariantCulture));
        // The sheet that goes out has the share, as ever.
        Assert.Contains($",{share},", (await studio.Get("/v1/sheets/fees")).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Pendant blue", """["Pendant blue"]""", "Pendant blue")]
    [InlineData("Pendant blue | Pendant green", """["Pendant blue","Pendant green"]""", "Pendant blue | Pendant green")]
    [InlineData("\"Pendant blue\nPendant green\"", """["Pendant blue","Pendant green"]""", "Pendant blue | Pendant green")]
    [InlineData("\"[\"\"a|b\"\"]\"", """["a|b"]""", "\"[\"\"a|b\"\"]\"")]
    [InlineData("0071", """["0071"]""", "\"[\"\"0071\"\"]\"")]
    public async Task Other_names_are_plain_in_a_cell_and_come_back_the_same(string cell, string names, string written)
    {
        await using var studio = await AStudio();
        Assert.Equal(200, (await Send(studio, "designs", $"sku,aliases\nRB-014,{cell}\n")).Status);
        Assert.Equal(names, (await studio.Get("/v1/designs/RB-014")).Json.GetProperty("aliases").GetRawText());
        var sheet = (await studio.Get("/v1/sheets/designs")).Text;
        Assert.Contains(written, sheet, StringComparison.Ordinal);
        Assert.Contains("\"unchanged\":1", (await Send(studio, "designs", sheet)).Text, StringComparison.Ordinal);
        Assert.Equal(200, (await Designs(studio, $"sku,aliases\nRB-014,{cell}\n")).Status);
    }

    [Fact]
    public async Task The_price_of_a_name_has_the_design_in_sku_and_the_name_in_alias_and_what_goes_out_comes_back()
    {
        await using var studio = await AStudio();
        Assert.Equal(200, (await Send(studio, "designs", "sku,aliases\nRB-014,Pendant blue\n")).Status);
        Assert.Equal(200, (await Send(studio, "prices", "sku,channel,alias,price\nRB-014,web,,58\nRB-014,web,Pendant blue,62\n")).Status);
        var sheet = (await studio.Get("/v1/sheets/prices")).Text;
        Assert.Contains("RB-014,web,Pendant blue,62", sheet, StringComparison.Ordinal);
        Assert.Contains("\"unchanged\":2", (await Send(studio, "prices", sheet)).Text, StringComparison.Ordinal);
    }

    private static async Task<Studio> AStudio()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        return studio;
    }

    private static Task<Answer> Send(Studio studio, string name, string sheet) =>
        studio.SendBytes("PUT", "/v1/sheets/" + name, Encoding.UTF8.GetBytes(sheet), "text/csv");

    private static Task<Answer> Designs(Studio studio, string sheet) =>
        studio.SendBytes("POST", "/v1/designs/batch", Encoding.UTF8.GetBytes(sheet), "text/csv");

    private static IEnumerable<int> Lines(Answer refused) =>
        refused.Json.GetProperty("errors").EnumerateArray().Select(error => error.GetProperty("line").GetInt32());

    private static IEnumerable<string> Details(Answer refused) =>
        refused.Json.GetProperty("errors").EnumerateArray().Select(error => error.GetProperty("detail").GetString()!);
}
