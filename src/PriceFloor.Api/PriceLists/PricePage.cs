using System.Globalization;
using System.Net;
using System.Text;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.PriceLists;

/// <summary>
/// A price list as one page to print: black on white, a table for each channel, no script and nothing from elsewhere. A page break never cuts a row,
/// and each page repeats the head of the table.
/// </summary>
public static class PricePage
{
    private const string Style = """
        @page { margin: 14mm 12mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif } }
        :root { color-scheme: light }
        body { font: 11pt/1.35 system-ui, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif; color: #000; background: #fff; max-width: 190mm; margin: 0 auto; padding: 4mm }
        h1 { font-size: 18pt; margin: 0 }
        h2 { font-size: 13pt; margin: 7mm 0 2mm; break-after: avoid }
        p { margin: 1mm 0 }
        small { font-size: 8.5pt; color: #444 }
        table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums }
        thead { display: table-header-group }
        tr { break-inside: avoid }
        th, td { text-align: left; vertical-align: baseline; padding: 1.2mm 2mm; border-bottom: .25mm solid #888 }
        thead th { border-bottom: .5mm solid #000; font-size: 9.5pt }
        tbody th { font-weight: normal; overflow-wrap: anywhere; min-width: 40mm }
        td.code { overflow-wrap: anywhere; min-width: 20mm }
        td.money, th.money { text-align: right; white-space: nowrap }
        td.listed { font-weight: bold }
        td.verdict { white-space: nowrap }
        footer { margin-top: 6mm; break-inside: avoid }
        @media print { body { max-width: none; padding: 0; font-size: 9.5pt } th, td { padding: .8mm 2mm } h2 { margin-top: 5mm } }
        @media screen and (max-width: 40em) { body { font-size: 10pt; padding: 2mm } th, td { padding: 1.2mm 1mm } tbody th { min-width: 24mm } .code { display: none } td.verdict { white-space: normal } }
        """;

    /// <param name="list">The price list.</param>
    /// <param name="names">Each channel's name for people, by key.</param>
    /// <param name="day">The day of the page.</param>
    public static byte[] Of(PriceListAnswer list, IReadOnlyDictionary<string, string?> names, DateOnly day)
    {
        var date = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var page = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
            + $"<meta name=\"viewport\" content=\"width=device-width\">\n<title>Prices, {date}</title>\n<style>\n{Style}\n</style>\n</head>\n<body>\n"
            + $"<h1>Prices, {date}</h1>\n");
        page.Append("<p>The floor is the lowest price that carries its part of the year; the target also follows the studio's own rule.</p>\n");
        foreach (var channel in list.Items.GroupBy(item => item.Channel).OrderBy(channel => channel.Key, StringComparer.Ordinal))
            Table(page, [.. channel], DisplayText.Named(names.GetValueOrDefault(channel.Key), channel.Key));
        if (list.Items.Count == 0)
            page.Append("<p>Nothing is listed here.</p>\n");
        page.Append($"<footer>"
            + $"<small>Calculated from {Text(string.Join(", ", list.Basis.Profiles.Concat(list.Basis.Channels).Select(DisplayText.Document)))}. No "
            + $"tax or legal advice.</small></footer>\n");
        return Encoding.UTF8.GetBytes(page.Append("</body>\n</html>\n").ToString());
    }

    private static void Table(StringBuilder page, IReadOnlyList<PriceListItemAnswer> items, string channel)
    {
        page.Append($"<h2>{Text(channel)}, {Text(items[0].Currency)}</h2>\n<table>\n<thead><tr><th scope=\"col\">Design</th>"
            + $"<th scope=\"col\" class=\"code\">Code</th>");
        page.Append("<th scope=\"col\" class=\"money\">Floor</th><th scope=\"col\" class=\"money\">Target</th>"
            + "<th scope=\"col\" class=\"money\">Listed</th><th scope=\"col\">The listed price</th></tr></thead>\n<tbody>\n");
        foreach (var item in items)
            page.Append($"<tr><th scope=\"row\">{Text(item.Name ?? item.Sku)}</th><td class=\"code\">{Text(item.Sku)}</td>")
                .Append($"<td class=\"money\">{Money(item.FloorPrice, item)}</td><td class=\"money\">{Money(item.TargetPrice, item)}</td>"
                    + $"<td class=\"money listed\">{Money(item.ListedPrice, item)}</td>")
                .Append($"<td "
                    + $"class=\"verdict\">{Text(item.Reason is { } reason ? DisplayText.Reason(reason) : DisplayText.Verdict(item.Verdict))}</td>"
                    + $"</tr>\n");
        page.Append("</tbody>\n</table>\n");
    }

    private static string Money(decimal? amount, PriceListItemAnswer item) => amount is { } price ? DisplayText.Money(price, item.Currency) : "";

    private static string Text(string words) => WebUtility.HtmlEncode(words);
}
