using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>A bad row is a fault in its place, and the rows after it are read.</summary>
public sealed class SheetFaultTests
{
    [Theory]
    [InlineData("a,b\n1,2\n\"3,4\n5,6\n", "1|2", "malformed 3:1", "5|6")]
    [InlineData("a,b\n1,\"2\n3,4", "malformed 2:3", "3|4")]
    [InlineData("a,b\n1,\"2", "malformed 2:3")]
    [InlineData("a,b\n1,\"", "malformed 2:3")]
    [InlineData("a,b\r\n1,\"2\r\n3,4\r\n5,\"6", "malformed 2:3", "3|4", "malformed 4:3")]
    public async Task A_quote_that_is_never_closed_costs_its_line_alone(string sheet, params string[] rows) =>
        Assert.Equal(rows, await ReadSheet.Told(sheet));

    [Theory]
    [InlineData("a,b\n\"1\"x,2\n3,4\n", "malformed 2:4", "3|4")]
    [InlineData("a,b\n\"1\" ,2\n3,4\n", "malformed 2:4", "3|4")]
    [InlineData("a,b\n\"1\"\"2\"3,4\n5,6\n", "malformed 2:7", "5|6")]
    [InlineData("a,b\n\"Creme \u00e9 \"x,2\n3,4\n", "malformed 2:11", "3|4")]
    public async Task Text_after_a_closing_quote_costs_its_line(string sheet, params string[] rows) =>
        Assert.Equal(rows, await ReadSheet.Told(sheet));

    [Fact]
    public async Task A_forgotten_quote_that_another_rows_quote_closes_costs_one_row() =>
        // The quote of line 2 is closed by the first of line 3; what follows it there shows that line 2 was wrong.
        Assert.Equal(["malformed 2:1", "RB-2|6", "RB-3|7"], await ReadSheet.Told("a,b\n\"RB-1,5\n\"RB-2\",6\nRB-3,7\n"));

    [Theory]
    [InlineData("a,b\n1\"2,3\n4,5\n", "malformed 2:2", "4|5")]
    [InlineData("a,b\r1,2\"\r4,5\r", "malformed 2:4", "4|5")]
    [InlineData("a,b\n1\",\"x\ny\"\n4,5\n", "malformed 2:2", "malformed 3:2", "4|5")]
    public async Task A_quote_inside_a_plain_field_costs_its_line(string sheet, params string[] rows) =>
        Assert.Equal(rows, await ReadSheet.Told(sheet));

    [Fact]
    public async Task A_broken_row_keeps_its_first_line_as_it_came()
    {
        var rows = await ReadSheet.Rows("a,b\r\n1,\"x\"y,2\r\n3,4\r\n");
        Assert.Equal(("1,\"x\"y,2", "\r\n", ""), (rows[0].Raw, rows[0].LineEnd, rows[0].Fields));
    }

    [Fact]
    public async Task Bytes_that_are_not_UTF8_are_reported_with_their_character()
    {
        byte[] sheet = [.. "a,b\n\u00e9x"u8, 0xE9, .. ",2\n3,4\n"u8];
        var rows = await ReadSheet.Rows(sheet);
        Assert.Equal(["not-utf-8 2:3", ""], rows.Select(row => row.Fault));
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("\uFEFF", "empty")]
    [InlineData("\n\r\n\r", "empty")]
    [InlineData("\"sku,price\nRB,5\n", "malformed")]
    [InlineData("sku\",price\nRB,5\n", "malformed")]
    public async Task Without_a_header_there_is_no_sheet(string sheet, string code)
    {
        using var reader = new SheetReader(Dripping.Whole(sheet), SheetDialect.Comma);
        var (header, fault) = await reader.ReadHeaderAsync(TestContext.Current.CancellationToken);
        Assert.Null(header);
        Assert.Equal((code, 1, 1), (fault!.Code.Word, fault.Line, code == "malformed" && sheet[0] != '"' ? fault.Column - 3 : fault.Column));
    }
}
