using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.LineSheets;

/// <summary>A line sheet as a table of a spreadsheet.</summary>
public static class LineSheetTable
{
    public static Task<byte[]> Of(LineSheetAnswer sheet, SheetDialect dialect, CancellationToken cancel)
    {
        string[] suggested = sheet.Sells == Sells.Wholesale ? ["suggestedRetail"] : [];
        return SheetBytes.Of(dialect, ["sku", "name", "price", .. suggested, "currency"], sheet.Items, (table, item) =>
        {
            table.Text(item.Sku).Text(item.Name).Number(item.Price);
            if (sheet.Sells == Sells.Wholesale)
                table.Number(item.SuggestedRetail);
            table.Text(sheet.Currency);
        }, cancel);
    }
}
