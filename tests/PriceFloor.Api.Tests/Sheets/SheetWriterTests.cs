using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>A caller's sheet comes back unchanged, with our columns.</summary>
public sealed class SheetWriterTests
{
    [Fact]
    public async Task Our_columns_are_at_the_right() => Assert.Equal(
        "sku,channel,price,verdict,floorPrice,targetPrice,problem\nRB-014,web,58.00,above-target,34.29,41.00,\n",
        await WrittenSheet.Of("sku,channel,price\nRB-014,web,58.00\n"));

    [Fact]
    public async Task The_callers_cells_come_back_byte_for_byte() => Assert.Equal(
        "\uFEFF\"sku\", channel ,price,\"a \"\"note\"\"\",verdict,floorPrice,targetPrice,problem\r\n\"RB-014\", web,058.00,\"=1+1\r\n"
        + ", \"\"x\"\"\",above-target,34.29,41.00,\r\n",
        await WrittenSheet.Of("\uFEFF\"sku\", channel ,price,\"a \"\"note\"\"\"\r\n\"RB-014\", web,058.00,\"=1+1\r\n, \"\"x\"\"\"\r\n"));

    [Fact]
    public async Task Columns_of_ours_that_the_sheet_has_are_filled_in_place() => Assert.Equal(
        "Problem,sku,\"verdict\",channel,price,floorPrice,targetPrice\n,RB-014,above-target,web,58,34.29,41.00\n",
        await WrittenSheet.Of("Problem,sku,\"verdict\",channel,price\nold,RB-014,\"old,\"\"er\",web,58\n"));

    [Fact]
    public async Task An_answered_sheet_can_be_sent_again_and_does_not_grow()
    {
        var once = await WrittenSheet.Of("sku,channel,price,note\r\nRB-014,web,58.00,\"a\nb\"\r\n\r\nRB-015,web\r\n");
        Assert.Equal(once.Replace("\"Line 5, column 11: The row has 2 cells, the first row 4; give each column its cell, if only an empty one.\"", "",
            StringComparison.Ordinal)
            .Replace("RB-015,web,,,,,,", "RB-015,web,,,above-target,34.29,41.00,", StringComparison.Ordinal), await WrittenSheet.Of(once));
    }

    [Fact]
    public async Task With_semicolons_our_decimals_have_commas() => Assert.Equal(
        "sku;channel;price;verdict;floorPrice;targetPrice;problem\nRB-014;web;58,50;above-target;34,29;41,00;\n",
        await WrittenSheet.Of("sku;channel;price\nRB-014;web;58,50\n", dialect: SheetDialect.Semicolon));

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public async Task Line_ends_and_blank_lines_stay_so_lines_match(string end) => Assert.Equal(
        $"sku,price,verdict,floorPrice,targetPrice,problem{end}A,1,above-target,34.29,41.00,{end}{end}{end}B,2,above-target,34.29,41.00,",
        await WrittenSheet.Of($"sku,price{end}A,1{end}{end}{end}B,2", names: new(Channel: null)));

    [Fact]
    public async Task A_sheet_of_its_header_alone_comes_back_so() =>
        Assert.Equal("sku,price,verdict,floorPrice,targetPrice,problem", await WrittenSheet.Of("sku,price", names: new(Channel: null)));

    [Fact]
    public async Task What_is_left_out_of_an_answer_is_an_empty_cell() =>
        Assert.Equal("sku,price,verdict,floorPrice,targetPrice,problem\nA,1,below-floor,,,\n",
            await WrittenSheet.Of("sku,price\nA,1\n", new("below-floor"), names: new(Channel: null)));

    [Theory]
    [InlineData("A\n", "A,,,,,\"Line 2, column 2: The row has 1 cell, the first row 2; give each column its cell, if only an empty one.\"\n")]
    [InlineData("A,1,2\n",
        "\"A,1,2\",,,,,\"Line 2, column 5: The row has 3 cells, the first row 2; put a cell that has a separator into quotes.\"\n")]
    [InlineData("=A,1,2\n",
        "\"'=A,1,2\",,,,,\"Line 2, column 6: The row has 3 cells, the first row 2; put a cell that has a separator into quotes.\"\n")]
    [InlineData("A\"b,1\r", "\"A\"\"b,1\",,,,,\"Line 2, column 2: A quote is inside a cell that does not begin with one; "
        + "put the cell into quotes and double the quotes inside it.\"\r")]
    [InlineData("A,\"1", "\"A,\"\"1\",,,,,\"Line 2, column 3: A quote is opened here and never closed; close the cell with a quote, "
        + "and double the quotes inside it.\"")]
    public async Task A_bad_row_has_its_problem_and_as_many_columns_as_all(string row, string written) =>
        Assert.Equal("sku,price,verdict,floorPrice,targetPrice,problem\n" + written,
            await WrittenSheet.Of("sku,price\n" + row, names: new(Channel: null)));

    [Fact]
    public async Task A_bad_rows_text_never_lands_in_a_column_of_ours() => Assert.Equal(
        "problem,sku,price,verdict,floorPrice,targetPrice\n\"Line 2, column 2: A quote is inside a cell that does not begin with one; put the "
        + "cell into quotes and double the quotes inside it.\",\"a\"\"\",,,,\n",
        await WrittenSheet.Of("problem,sku,price\na\"\n", names: new(Channel: null)));

    [Fact]
    public async Task A_row_that_is_too_long_leaves_its_cells_empty() => Assert.Equal(
        "sku,price,verdict,floorPrice,targetPrice,problem\n,,,,,\"Line 2, column 1: The row is longer than 20 bytes; shorten it.\"\r\n"
        + "A,1,above-target,34.29,41.00,\n",
        await WrittenSheet.Of("sku,price\n123456789012345678901,1\r\nA,1\n", names: new(Channel: null), most: 20));

    [Fact]
    public async Task What_is_not_UTF8_comes_back_with_replacement_characters()
    {
        var written = await WrittenSheet.Of([.. "sku,price\nCr"u8, 0xE8, .. "me,1\n"u8], names: new(Channel: null));
        Assert.Equal([
            .. "sku,price,verdict,floorPrice,targetPrice,problem\nCr\uFFFDme,1,,,,\"Line 2, column 3: A character here is not UTF-8; save the sheet as CSV in UTF-8.\"\n"u8,
        ], written);
    }

    [Fact]
    public async Task A_long_sheet_goes_through_in_flat_pieces()
    {
        var rows = string.Concat(Enumerable.Range(0, 20_000).Select(row => $"RB-{row},web,1.50\r\n"));
        var written = await WrittenSheet.Of("sku,channel,price\r\n" + rows);
        Assert.Equal("sku,channel,price,verdict,floorPrice,targetPrice,problem\r\n"
            + rows.Replace("\r\n", ",above-target,34.29,41.00,\r\n", StringComparison.Ordinal), written);
    }

    [Fact]
    public async Task A_row_as_long_as_may_be_goes_through_behind_others()
    {
        var (small, large) = (string.Concat(Enumerable.Repeat("A,1\n", 500)), new string('x', SheetReader.MostRowBytes - 4));
        var written = await WrittenSheet.Of($"sku,price\n{small}B,1{large}\n{large},1,2\n", names: new(Channel: null));
        Assert.Equal(
            "sku,price,verdict,floorPrice,targetPrice,problem\n" + small.Replace("\n", ",above-target,34.29,41.00,\n", StringComparison.Ordinal)
                + $"B,1{large},above-target,34.29,41.00,\n\"{large},1,2\",,,,,\"Line 503, column 65536: The row has 3 cells, the first row 2; put a "
                + "cell that has a separator into quotes.\"\n",
            written);
    }
}
