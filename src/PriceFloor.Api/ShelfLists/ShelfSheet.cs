using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.ShelfLists;

/// <summary>A shelf as a sheet: a row for each design.</summary>
internal static class ShelfSheet
{
    public static Task<byte[]> Of(ShelfAnswer shelf, SheetDialect dialect, CancellationToken cancel) => SheetBytes.Of(dialect,
        ["sku", "name", "currency", "sold", "take", "contribution", "earned", "earnedLow", "earnedHigh", "shareOfContribution", "shareOfHours",
            "pull", "sellThrough", "daysToSell", "onHand", "cover", "oldest", "because", "decision", "instead"],
        shelf.Items, (sheet, row) => sheet.Text(row.Sku).Text(row.Name).Text(shelf.Currency).Number(row.Sold).Number(row.Take)
            .Number(row.Contribution).Number(row.Earned).Number(row.EarnedLow).Number(row.EarnedHigh).Number(row.ShareOfContribution)
            .Number(row.ShareOfHours).Number(row.Pull).Number(row.SellThrough).Number(row.DaysToSell).Number(row.OnHand).Number(row.Cover)
            .Number(row.Oldest).Text(string.Join(' ', row.Because)).Text(KebabWords.Of(row.Decision)).Text(row.Instead), cancel);
}
