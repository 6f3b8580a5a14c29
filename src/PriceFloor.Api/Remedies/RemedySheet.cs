using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.Remedies;

/// <summary>
/// Prices that fall short as a sheet: a row each, and a column for each way with the figure that is enough (with
/// spend-less the cut), empty where it cannot be.
/// </summary>
internal static class RemedySheet
{
    private static readonly RemedyKind[] s_ways = Enum.GetValues<RemedyKind>();

    public static Task<byte[]> Of(RemedyListAnswer list, SheetDialect dialect, CancellationToken cancel) => SheetBytes.Of(dialect,
        ["sku", "name", "channel", "currency", "listedPrice", "verdict", "shortBy", .. s_ways.Select(way => KebabWords.Of(way))],
        list.Items, Write, cancel);

    private static void Write(SheetDocument sheet, ShortPriceAnswer item)
    {
        sheet.Text(item.Alias ?? item.Sku).Text(item.Name).Text(item.Channel).Text(item.Currency).Number(item.ListedPrice)
            .Text(KebabWords.Of(item.Verdict)).Number(item.ShortBy);
        foreach (var way in s_ways)
        {
            var remedy = item.Remedies.FirstOrDefault(one => one.Remedy == way);
            if (way == RemedyKind.SellElsewhere)
                sheet.Text(remedy?.Channels is { } channels ? string.Join(' ', channels.Select(other => other.Channel)) : null);
            else
                sheet.Number(remedy?.Cut ?? remedy?.After);
        }
    }
}
