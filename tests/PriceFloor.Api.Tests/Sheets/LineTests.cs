using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>Line ends, line numbers, blank lines, long lines, byte order marks.</summary>
public sealed class LineTests
{
    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public async Task Any_line_end_will_do_and_is_kept(string end)
    {
        var rows = await ReadSheet.Rows($"a,b{end}1,2{end}3,4{end}");
        Assert.Equal([(2L, "1|2", end), (3L, "3|4", end)], rows.Select(row => (row.Line, row.Values, row.LineEnd)));
    }

    [Fact]
    public async Task Line_ends_may_be_mixed()
    {
        var rows = await ReadSheet.Rows("a,b\r\n1,2\n3,4\r5,6\r\n7,8");
        Assert.Equal(["\n", "\r", "\r\n", ""], rows.Select(row => row.LineEnd));
        Assert.Equal([2, 3, 4, 5], rows.Select(row => row.Line));
    }

    [Fact]
    public async Task Line_breaks_inside_quotes_count_as_lines()
    {
        var rows = await ReadSheet.Rows("a,\"b\nb\"\n\"1\r\n1\",\"2\r2\n\n2\"\n3,4\n");
        Assert.Equal([3, 8], rows.Select(row => row.Line));
    }

    [Fact]
    public async Task A_field_knows_its_line_and_column_in_characters()
    {
        using var reader = new SheetReader(Dripping.Whole("a,b,c\n\u00e9\U0001F3FA,\"1\n\u00e9\",x\n"), SheetDialect.Comma);
        await reader.ReadHeaderAsync(TestContext.Current.CancellationToken);
        Assert.True(reader.TryNext(out var row));
        Assert.Equal([(2, 1), (2, 4), (3, 4)], Enumerable.Range(0, 3).Select(row.PlaceOf));
    }

    [Fact]
    public async Task The_values_of_one_row_can_be_held_together()
    {
        using var reader = new SheetReader(Dripping.Whole("a,b,c\n\"1\"\"\",\"2\"\"\",\"3\"\"\"\n"), SheetDialect.Comma);
        await reader.ReadHeaderAsync(TestContext.Current.CancellationToken);
        Assert.True(reader.TryNext(out var row));
        AssertHeld(row);

        static void AssertHeld(SheetRow row)
        {
            var one = row.Value(0);
            var two = row.Value(1);
            Assert.True(one.SequenceEqual("1\""u8) && two.SequenceEqual("2\""u8));
        }
    }

    [Fact]
    public async Task Blank_lines_are_recognised_and_counted()
    {
        var rows = await ReadSheet.Rows("\n\r\na,b\n\n1,2\r\n\r\n \n\"\"\n3,4\n\n");
        Assert.Equal(["blank", "", "blank", "short-row 7:2", "short-row 8:3", "", "blank"], rows.Select(row => row.Fault));
        Assert.Equal([4, 5, 6, 7, 8, 9, 10], rows.Select(row => row.Line));
    }

    [Fact]
    public async Task A_byte_order_mark_is_not_part_of_the_first_name()
    {
        Assert.Equal(("sku", true), ((await ReadSheet.Header("\uFEFFsku,price\n")).Names[0], (await ReadSheet.Header("\uFEFFsku,price\n")).HasMark));
        Assert.False((await ReadSheet.Header("sku,price\n")).HasMark);
        Assert.Equal("sku", (await ReadSheet.Header("\uFEFF\"sku\",price\n")).Names[0]);
        Assert.Equal(["\uFEFF1|2"], await ReadSheet.Told("a,b\n\uFEFF1,2\n"));
    }

    [Theory]
    [InlineData("a,b\n12345,6789\n1,2\n", "12345|6789", "1|2")]
    [InlineData("a,b\n12345,67890\n1,2\n", "too-long 2:1", "1|2")]
    [InlineData("a,b\n12345,67890\r\n1,2\r\n", "too-long 2:1", "1|2")]
    [InlineData("a,b\n12345,6789\r\n1,2\r\n", "12345|6789", "1|2")]
    [InlineData("a,b\n12345,6789\r1,2\r", "12345|6789", "1|2")]
    [InlineData("a,b\n123456789012345678901234567890123456789012345678901234567890\n1,2\n", "too-long 2:1", "1|2")]
    [InlineData("a,b\n123456789012345678901234567890123456789012345678901234567890\r\n1,2", "too-long 2:1", "1|2")]
    [InlineData("a,b\n123456789012345678901234567890123456789012345678901234567890", "too-long 2:1")]
    [InlineData("a,b\n\"12345\"x8901234567890123456789012345678901234567890\n1,2\n", "malformed 2:8", "1|2")]
    [InlineData("a,b\n1,\"23\n4,5\n6,7\n8,9\n", "too-long 2:1", "4|5", "6|7", "8|9")]
    [InlineData("a,b\n\"1\n2\",\"3\n4\"\n5,6\n", "1\n2|3\n4", "5|6")]
    public async Task A_row_longer_than_the_limit_is_a_fault_and_reading_continues(string sheet, params string[] rows) =>
        Assert.Equal(rows, await ReadSheet.Told(sheet, most: sheet.Contains("\"1\n2", StringComparison.Ordinal) ? 11 : 10));

    [Fact]
    public async Task A_row_that_is_too_long_keeps_nothing_but_its_line_end()
    {
        var rows = await ReadSheet.Rows("a,b\n" + new string('x', 500) + "\r\n1,2\n", most: 100);
        Assert.Equal([("", "\r\n", 2L), ("1,2", "\n", 3L)], rows.Select(row => (row.Raw, row.LineEnd, row.Line)));
    }
}
