using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>Columns are found by the names that the caller gives them.</summary>
public sealed class ColumnTests
{
    [Theory]
    [InlineData("sku,channel,price\n", 0, 1, 2)]
    [InlineData("note,price,sku,channel\n", 2, 3, 1)]
    [InlineData("\" Price \", SKU ,Channel\n", 1, 2, 0)]
    [InlineData("SKU,sku,channel,PRICE\n", 1, 2, 3)]
    public async Task A_name_is_found_as_written_else_regardless_of_case(string sheet, int sku, int channel, int price)
    {
        var columns = await Found(sheet, new());
        Assert.Equal((sku, channel, price), (columns.Sku, columns.Channel!.Value, columns.Price));
    }

    [Fact]
    public async Task The_caller_names_the_columns_and_may_have_none_for_the_channel()
    {
        var columns = await Found("Item,List price,channel\n", new("Item", null, " List price"));
        Assert.Equal((0, null, 1), (columns.Sku, columns.Channel, columns.Price));
    }

    [Fact]
    public async Task A_missing_column_is_named_beside_those_that_are_there()
    {
        var faults = await Faults("Item,\"List \"\"web\"\" price\",\n", new());
        Assert.Equal(["skuColumn missing-column", "channelColumn missing-column", "priceColumn missing-column"],
            faults.Select(fault => $"{fault.Parameter} {fault.Code}"));
        Assert.Equal(
            "The sheet has no column \"sku\"; it has \"Item\", \"List \"web\" price\", (no name). Name yours with skuColumn.", faults[0].Detail);
    }

    [Theory]
    [InlineData("price,price,sku,channel\n", "priceColumn")]
    [InlineData("Price,PRICE,sku,channel\n", "priceColumn")]
    [InlineData("price,sku,Sku,channel,sku\n", "skuColumn")]
    [InlineData("price,sku,channel,verdict,verdict\n", "verdict")]
    public async Task A_column_that_is_there_twice_is_a_fault(string sheet, string parameter)
    {
        var fault = Assert.Single(await Faults(sheet, new()));
        Assert.Equal(("duplicate-column", parameter), (fault.Code, fault.Parameter));
    }

    [Fact]
    public async Task What_nobody_reads_may_be_there_twice() => Assert.Equal(2, (await Found("note,note,sku,price\n", new(Channel: null))).Sku);

    [Fact]
    public async Task A_column_that_the_answer_fills_cannot_be_read_too()
    {
        var fault = Assert.Single(await Faults("sku,channel,targetPrice\n", new(Price: "TargetPrice")));
        Assert.Equal(("answer-column", "priceColumn"), (fault.Code, fault.Parameter));
    }

    [Fact]
    public async Task A_sheet_in_the_other_dialect_is_recognised()
    {
        Assert.All(await Faults("sku;channel;price\n", new()), fault =>
            Assert.EndsWith("a sheet with semicolons between its columns is sent with dialect=semicolon.", fault.Detail, StringComparison.Ordinal));
        Assert.All(await Faults("sku,channel,price\n", new(), SheetDialect.Semicolon),
            fault => Assert.EndsWith("is sent without dialect=semicolon.", fault.Detail, StringComparison.Ordinal));
    }

    private static async Task<SheetColumns> Found(string sheet, ColumnNames names)
    {
        var (found, faults) = SheetColumns.Of(await ReadSheet.Header(sheet), names, SheetDialect.Comma);
        Assert.Empty(faults);
        return found!;
    }

    private static async Task<IReadOnlyList<InputError>> Faults(string sheet, ColumnNames names, SheetDialect? dialect = null)
    {
        var (found, faults) = SheetColumns.Of(await ReadSheet.Header(sheet, dialect), names, dialect ?? SheetDialect.Comma);
        Assert.Null(found);
        return faults;
    }
}
