using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>How to read a sheet, and the moment to answer for.</summary>
public sealed record BatchQuery(string? Channel, ColumnNames Columns, SheetDialect Dialect, bool NamesSheetParts, DateTimeOffset? AsOf)
    : IQuery<BatchQuery>
{
    private static class Usual
    {
        public const string Sku = "sku", Price = "price", Channel = "channel";
    }

    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("channel", "For a sheet without such a column: the channel of every row.", "string", Example: "web"),
        new("skuColumn", "The sheet's column with the design's key or alias.", "string", Default: "\"sku\"", Example: "Item"),
        new("priceColumn", "The sheet's column with the price.", "string", Default: "\"price\"", Example: "List price"),
        new("channelColumn", "The sheet's column with the channel's key.", "string", Default: "\"channel\"", Example: "Shop"),
        SheetQuery.Dialect,
        QueryParameters.AsOf,
    ];

    public static BatchQuery Read(QueryValues values)
    {
        var (channel, sku, price, channelColumn) = (values.Text("channel"), values.Text("skuColumn", 200), values.Text("priceColumn", 200),
            values.Text("channelColumn", 200));
        // a default that is sent changes nothing
        var (ownChannel, ownSku, ownPrice) = (channelColumn is not (null or Usual.Channel), sku is not (null or Usual.Sku),
            price is not (null or Usual.Price));
        if (channel is not null && ownChannel)
            values.Add("channelColumn", FaultCodes.Unexpected,
                "Give either channel (for every row) or channelColumn (the column with each row's own); leave one of them out.");
        return new BatchQuery(channel,
            new ColumnNames(sku ?? Usual.Sku, channel is null ? channelColumn ?? Usual.Channel : null, price ?? Usual.Price),
            SheetQuery.DialectOf(values), channel is not null || ownSku || ownPrice || ownChannel, values.Time("asOf"));
    }
}
