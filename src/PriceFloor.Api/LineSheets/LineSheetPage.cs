using System.Globalization;
using System.Text;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.LineSheets;

/// <summary>A line sheet as one page to print: for shops and galleries with what they pay, for a stall with retail prices alone.</summary>
public static class LineSheetPage
{
    /// <param name="sheet">The line sheet.</param>
    /// <param name="channel">The channel's name for people.</param>
    public static byte[] Of(LineSheetAnswer sheet, string channel)
    {
        var heading = sheet.StudioName ?? "Prices";
        var page = new StringBuilder(
            $"<h1>{Text(heading)}</h1>\n<p>{Text(channel)}, {Date(sheet.Day)}. Prices in {sheet.Currency}{TaxWords(sheet)}.</p>\n");
        if (sheet.Items.Count == 0)
            page.Append("<p>Nothing is listed here.</p>\n");
        else
            Table(page, sheet);
        Terms(page, sheet);
        return PrintedPage.Of($"{heading}, {Date(sheet.Day)}", page);
    }

    private static void Table(StringBuilder page, LineSheetAnswer sheet)
    {
        var isForShops = sheet.Sells == Sells.Wholesale;
        page.Append("<table>\n<thead><tr><th scope=\"col\">Design</th><th scope=\"col\">Code</th>")
            .Append($"<th scope=\"col\" class=\"money\">{(isForShops ? "Your price" : "Price")}</th>")
            .Append(isForShops ? "<th scope=\"col\" class=\"money\">Suggested retail</th>" : "").Append("</tr></thead>\n<tbody>\n");
        foreach (var item in sheet.Items)
            page.Append($"<tr><th scope=\"row\">{Text(item.Name ?? item.Sku)}</th><td>{Text(item.Code)}</td>")
                .Append($"<td class=\"money listed\">{DisplayText.Money(item.Price, sheet.Currency)}</td>")
                .Append(isForShops ? $"<td class=\"money\">{Suggested(item, sheet.Currency)}</td>" : "").Append("</tr>\n");
        page.Append("</tbody>\n</table>\n");
    }

    private static void Terms(StringBuilder page, LineSheetAnswer sheet)
    {
        List<string> terms = [];
        if (sheet.ShopShare is { } share)
            terms.Add($"You keep {DisplayText.Number(share * 100)} % of the price{(sheet.TaxIncluded ? " before sales tax" : "")}.");
        if (sheet.MinimumOrder is { } order)
            terms.Add($"Smallest order: {DisplayText.Money(order, sheet.Currency)} {sheet.Currency}.");
        if (sheet.OrderTerms is { } words)
            terms.Add(words);
        if (terms.Count > 0)
            page.Append($"<footer>{string.Concat(terms.Select(term => $"<p>{Text(term)}</p>"))}</footer>\n");
    }

    private static string TaxWords(LineSheetAnswer sheet) =>
        !sheet.HasSalesTax ? "" : sheet.TaxIncluded ? ", sales tax included" : ", before sales tax";

    private static string Suggested(LineSheetItemAnswer item, string currency) =>
        item.SuggestedRetail is { } price ? DisplayText.Money(price, currency) : "";

    private static string Date(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Text(string words) => PrintedPage.Text(words);
}
