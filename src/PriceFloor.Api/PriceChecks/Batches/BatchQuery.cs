using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>How a sheet is read, and as of when all is answered.</summary>
public sealed record BatchQuery(string? Channel, ColumnNames Columns, SheetDialect Dialect, bool NamesSheetParts, DateTimeOffset? AsOf) : IQuery<BatchQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "For a sheet without such a column: the channel of every row.", "string", Example: "web"),
        new("skuColumn", "The sheet's column with the design's key or alias.", "string", Default: "\"sku\"", Example: "Item"),
        new("priceColumn", "The sheet's column with the price.", "string", Default: "\"price\"", Example: "List price"),
        new("channelColumn", "The sheet's column with the channel's key.", "string", Default: "\"channel\"", Example: "Shop"),
        new("dialect", "\"semicolon\" for sheets with semicolons between columns and decimal commas.", "string", Example: "semicolon"),
        QueryParameters.AsOf,
    ];

    public static BatchQuery Read(QueryValues values)
    {
        var (channel, sku, price, channelColumn, dialect) = (values.Text("channel"), values.Text("skuColumn", 200), values.Text("priceColumn", 200), values.Text("channelColumn", 200), values.Word<DialectWord>("dialect"));
        if (channel is not null && channelColumn is not null)
            values.Add("channelColumn", "unexpected", "Either channel is the channel of every row, or channelColumn says where each row has its own; leave one of them out.");
        return new BatchQuery(channel, new ColumnNames(sku ?? "sku", channel is null ? channelColumn ?? "channel" : null, price ?? "price"),
            dialect == DialectWord.Semicolon ? SheetDialect.Semicolon : SheetDialect.Comma, channel is not null || sku is not null || price is not null || channelColumn is not null, values.Time("asOf"));
    }

    private enum DialectWord { Comma, Semicolon }
}
