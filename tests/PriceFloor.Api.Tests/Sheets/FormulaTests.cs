using System.IO.Pipelines;
using System.Text;
using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>Text that we write into a cell is never run by a spreadsheet; numbers are left alone.</summary>
public sealed class FormulaTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-1", "'-1")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\t=1", "\"'\t=1\"")]
    [InlineData("\r=1", "\"'\r=1\"")]
    [InlineData("=HYPERLINK(\"x\",\"y\")", "\"'=HYPERLINK(\"\"x\"\",\"\"y\"\")\"")]
    [InlineData("a=1", "a=1")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("a;=1", "\"a;=1\"")]
    [InlineData("5\" bowl", "\"5\"\" bowl\"")]
    [InlineData("two\nlines", "\"two\nlines\"")]
    [InlineData("cr\u00E8me", "cr\u00E8me")]
    [InlineData("", "")]
    public async Task Text_is_defused_and_quoted_if_it_must_be(string text, string cell)
    {
        Assert.Equal($"a,b\r\n{cell},x\r\n", await Document(SheetDialect.Comma, list => list.Text(text).Text("x").EndRow()));
        Assert.Equal($"sku,price,verdict,floorPrice,targetPrice,problem\nA,1,,,,{cell}\n",
            await WrittenSheet.Of("sku,price\nA,1\n", new(Problem: text), names: new(Channel: null)));
    }

    [Fact]
    public async Task A_number_is_written_plain_in_its_dialect()
    {
        Assert.Equal("a,b\r\n-1.50,\r\n", await Document(SheetDialect.Comma, list => list.Number(-1.50m).Number(null).EndRow()));
        Assert.Equal("a;b\r\n-1,50;79228162514264337593543950335\r\n",
            await Document(SheetDialect.Semicolon, list => list.Number(-1.50m).Number(decimal.MaxValue).EndRow()));
    }

    [Fact]
    public async Task A_row_has_a_cell_for_every_column()
    {
        await Assert.ThrowsAsync<InvalidOperationException>(() => Document(SheetDialect.Comma, list => list.Text("x").EndRow()));
        Assert.Equal("a,b\r\n,\r\n", await Document(SheetDialect.Comma, list => list.Empty().Empty().EndRow()));
    }

    [Theory]
    [InlineData("-RB", "-RB")]
    [InlineData("'-RB", "-RB")]
    [InlineData("'RB", "'RB")]
    [InlineData("'", "'")]
    [InlineData("\"'=\"\"x\"\"\"", "=\"x\"")]
    public async Task A_key_that_was_defused_is_read_again_as_it_was(string field, string key)
    {
        using var reader = new SheetReader(Dripping.Whole($"sku,price\n{field},1\n"), SheetDialect.Comma);
        await reader.ReadHeaderAsync(TestContext.Current.CancellationToken);
        Assert.True(reader.TryNext(out var row));
        Assert.Equal(key, Encoding.UTF8.GetString(row.Cell(0)));
    }

    private static async Task<string> Document(SheetDialect dialect, Action<SheetDocument> write)
    {
        var written = new MemoryStream();
        using var list = new SheetDocument(PipeWriter.Create(written), dialect, "a", "b");
        write(list);
        await list.FlushAsync(TestContext.Current.CancellationToken);
        return Encoding.UTF8.GetString(written.ToArray());
    }
}
