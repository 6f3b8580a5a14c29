using System.IO.Compression;
using Microsoft.AspNetCore.Hosting;
using Xunit;

namespace PriceFloor.Api.Tests.Workbooks;

/// <summary>Files as spreadsheets save them, and files that are none or would take all memory.</summary>
public sealed class WorkbookFileTests
{
    private static readonly string[] s_heading = ["profile|name|amount|per"];

    [Theory]
    [InlineData("><v>42.560000000000002</v>", "42.56")] // as it is saved after 38 * 1.12
    [InlineData("><f>38*1.12</f><v>42.56</v>", "42.56")]
    [InlineData("><v>4.256E1</v>", "42.56")]
    [InlineData(""" t="inlineStr"><is><t> 42.56 </t></is>""", "42.56")] // a number that is a text
    [InlineData(""" t="str"><f>TEXT(42.56)</f><v>42.56</v>""", "42.56")]
    [InlineData(""" t="s"><v>0</v>""", "42.56")]
    [InlineData(""" t="s"><v>1</v>""", "42.56")] // of two runs, with a reading
    public async Task An_amount_is_read_as_it_is_shown(string cell, string amount)
    {
        await using var studio = await WorkbookTests.AStudio();
        var file = Book.Of([("expenses", [.. s_heading, "main|Rent|?|month"])], text => text == "?" ? cell : Book.Inline(text),
            "<si><t>42.56</t></si><si><r><t>42</t></r><r><t>.56</t></r><rPh><t>x</t></rPh></si>");
        Assert.Equal(200, (await studio.Send(file)).Status);
        Assert.Equal(amount, (await studio.Get("/v1/profiles/main")).Json.GetProperty("expenses")[0].GetProperty("amount").GetRawText());
    }

    [Theory]
    [InlineData(""" t="e"><v>#REF!</v>""")]
    [InlineData("><f>A1*2</f>")]
    [InlineData("><f>A1*2</f><v></v>")] // as a program writes it that does not calculate
    [InlineData("><f>A1*2</f><v/>")]
    [InlineData(""" s="1"><v>46145</v>""")] // 3.5 became a day of May
    public async Task A_cell_that_shows_no_amount_is_told(string cell)
    {
        await using var studio = await WorkbookTests.AStudio();
        var file = Book.Of([("expenses", [.. s_heading, "main|Rent|?|month"])], text => text == "?" ? cell : Book.Inline(text), null, Styles);
        var refused = (await studio.Send(file)).IsProblem(422, "invalid-input").Json.GetProperty("errors")[0];
        Assert.Equal(("cell-without-value", "C2"), (refused.GetProperty("code").GetString(), refused.GetProperty("cell").GetString()));
    }

    [Theory]
    [InlineData("", "46142", "2026-04-30")] // 46142 days after 30 December 1899
    [InlineData("<workbookPr date1904=\"1\"/>", "44680", "2026-04-30")] // 1462 days fewer
    [InlineData("<workbookPr date1904=\"0\"/>", "1", "1900-01-01")]
    public async Task A_day_is_a_number_that_is_shown_as_one(string properties, string number, string day)
    {
        await using var studio = await WorkbookTests.AStudio();
        foreach (var style in new[] { "", " s=\"1\"", " s=\"2\"" })
        {
            var file = Book.Of([("equipment",
                ["profile|name|cost|inService|depreciationMethod|depreciationLifeYears", "main|Kiln|3200|?|straight-line|8"])],
                text => text == "?" ? $"{style}><v>{number}</v>" : Book.Inline(text), null, Styles, properties);
            Assert.Equal(200, (await studio.Send(file)).Status);
            Assert.Equal(day, (await studio.Get("/v1/profiles/main")).Json.GetProperty("equipment")[0].GetProperty("inService").GetString());
        }
    }

    [Theory]
    [InlineData("2026-04-30")]
    [InlineData("2026-04-30T00:00:00")]
    [InlineData("2026-04-30T00:00:00.000Z")]
    public async Task A_day_may_be_a_text_of_days_and_headings_may_begin_with_a_capital(string day)
    {
        await using var studio = await WorkbookTests.AStudio();
        var file = Book.Of([("equipment",
            ["Profile|Name|Cost|InService|DepreciationMethod|DepreciationLifeYears", "main|Kiln|3200|?|straight-line|8"])],
            text => text == "?" ? $" t=\"d\"><v>{day}</v>" : Book.Inline(text));
        Assert.Equal(200, (await studio.Send(file)).Status);
        Assert.Equal("2026-04-30", (await studio.Get("/v1/profiles/main")).Json.GetProperty("equipment")[0].GetProperty("inService").GetString());
    }

    [Fact]
    public async Task Columns_may_stand_elsewhere_and_rows_may_be_blank()
    {
        await using var studio = await WorkbookTests.AStudio();
        Assert.Equal(200, (await studio.Send(Book.Of(("expenses", ["", "", "per||amount|profile|name", "", "month||700|main|Rent", "  "])))).Status);
        Assert.Equal("Rent", (await studio.Get("/v1/profiles/main")).Json.GetProperty("expenses")[0].GetProperty("name").GetString());
        var noted = (await studio.Send(Book.Of(("expenses", ["per||amount|profile|name", "month|dear|700|main|Rent"]))))
            .IsProblem(422, "invalid-input");
        Assert.Equal("B2", noted.Json.GetProperty("errors")[0].GetProperty("cell").GetString());
    }

    [Fact]
    public async Task What_is_no_workbook_is_told_in_a_sentence()
    {
        await using var studio = await WorkbookTests.AStudio();
        Assert.Contains("save it as .xlsx", (await studio.Send("profile,name\n"u8.ToArray())).IsProblem(400, "unreadable-request").Text,
            StringComparison.Ordinal);
        Assert.Contains("password", (await studio.Send([0xD0, 0xCF, 0x11, 0xE0])).IsProblem(400, "unreadable-request").Text,
            StringComparison.Ordinal);
        (await studio.Send("PK\u0003\u0004"u8.ToArray())).IsProblem(400, "unreadable-request");
        (await studio.Send([])).IsProblem(400, "unreadable-request");
        (await studio.Send(Book.Zip(new Dictionary<string, string> { ["mimetype"] = "application/vnd.oasis.opendocument.spreadsheet" })))
            .IsProblem(400, "unreadable-request");
        (await studio.SendBytes("POST", Book.Path, Book.Of(("expenses", s_heading)), "text/csv")).IsProblem(415, "media-type");
    }

    [Theory]
    [InlineData("<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/passwd\">]>", "&e;")]
    [InlineData("<!DOCTYPE x [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;\">]>", "&b;")]
    public async Task No_entity_is_read(string type, string entity)
    {
        await using var studio = await WorkbookTests.AStudio();
        var parts = Book.Parts(Book.Of(("expenses", [.. s_heading, "main|Rent|1|month"])));
        var sheet = parts["xl/worksheets/sheet1.xml"];
        parts["xl/worksheets/sheet1.xml"] = type + sheet.Replace(">Rent<", $">{entity}<", StringComparison.Ordinal);
        var refused = (await studio.Send(Book.Zip(parts))).IsProblem(400, "unreadable-request");
        Assert.DoesNotContain("root:", refused.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_small_file_cannot_unpack_to_any_size()
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_BATCH_BYTES", "1000000"));
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in Book.Parts(Book.Of([("expenses", s_heading)], Book.Inline, "<si/>"))
                .Where(part => !part.Key.EndsWith("sharedStrings.xml", StringComparison.Ordinal)))
                using (var writer = new StreamWriter(zip.CreateEntry(name).Open()))
                    writer.Write(text);
            using var shared = new StreamWriter(zip.CreateEntry("xl/sharedStrings.xml").Open());
            shared.Write("<sst>");
            for (var i = 0; i < 1_000_000; i++)
                shared.Write("<si><t>aaaaaaaaaaaaaaaa</t></si>"); // 28 MB
        }

        Assert.True(bytes.Length < 1_000_000);
        (await studio.Send(bytes.ToArray())).IsProblem(413, "too-large");
    }

    [Fact]
    public async Task Any_bytes_in_place_of_some_are_answered_and_never_a_fault_of_ours()
    {
        await using var studio = await WorkbookTests.AStudio();
        var (file, _) = await studio.Workbook();
        var random = new Random(20270102);
        for (var i = 0; i < 150; i++)
        {
            var broken = (byte[])file.Clone();
            for (var at = random.Next(1, 6); at > 0; at--)
                broken[random.Next(broken.Length)] = (byte)random.Next(256);
            var answer = await studio.Send(i % 3 == 0 ? broken[..random.Next(broken.Length)] : broken);
            Assert.True(answer.Status is 200 or 400 or 413 or 409 or 422, $"{answer.Status} {answer.Text}");
        }
    }

    [Fact]
    public async Task Any_text_in_place_of_some_in_the_parts_is_answered_too()
    {
        await using var studio = await WorkbookTests.AStudio();
        var parts = Book.Parts((await studio.Workbook()).File);
        string[] odd = ["", "<", "</c>", "<c r=\"ZZZZ9\">", "<row r=\"0\">", "<v>1E400</v>", " t=\"s\"", "&#0;", "\u0001",
            "<f>", "99999999999", "_x0000_", "<sheet/>", "Target=\"../../x\"", "-"];
        var random = new Random(20270103);
        for (var i = 0; i < 150; i++)
        {
            var (name, text) = parts.ElementAt(random.Next(parts.Count));
            var at = random.Next(text.Length + 1);
            var changed = text[..at] + odd[random.Next(odd.Length)] + text[Math.Min(text.Length, at + random.Next(30))..];
            var answer = await studio.Send(Book.Zip(new Dictionary<string, string>(parts) { [name] = changed }));
            Assert.True(answer.Status is 200 or 400 or 413 or 409 or 422, $"{answer.Status} {name} {answer.Text}");
        }
    }

    private const string Styles = "<numFmts><numFmt numFmtId=\"164\" formatCode=\"d&quot;.&quot;mmm yyyy\"/></numFmts>"
        + "<cellStyleXfs><xf numFmtId=\"0\"/></cellStyleXfs><cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"14\"/><xf numFmtId=\"164\"/></cellXfs>";
}
