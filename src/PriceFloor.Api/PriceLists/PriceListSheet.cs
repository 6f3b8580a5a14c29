using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.PriceLists;

/// <summary>
/// A price list as a sheet. A price that is listed under another name of its design has that name as its sku, as a shop's own sheet has.
/// </summary>
public static class PriceListSheet
{
    public static Task<byte[]> Of(PriceListAnswer list, SheetDialect dialect, bool mayRead, CancellationToken cancel)
    {
        string[] shortBy = mayRead ? ["shortBy"] : [];
        string[] columns = ["sku", "name", "channel", "currency", "floorPrice", "targetPrice", "listedPrice", "verdict", "reason", .. shortBy];
        return SheetBytes.Of(dialect, columns, list.Items, (sheet, row) =>
        {
            sheet.Text(row.ListedAs).Text(row.Name).Text(row.Channel).Text(row.Currency).Number(row.FloorPrice).Number(row.TargetPrice)
                .Number(row.ListedPrice)
                .Text(row.Verdict is { } verdict ? KebabWords.Of(verdict) : null).Text(row.Reason);
            if (mayRead)
                sheet.Number(row.ShortBy);
        }, cancel);
    }
}
