using System.Globalization;
using System.Text;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.PriceLists;

/// <summary>
/// A price list as one page to print, for the maker's own wall: a table for each channel.
/// </summary>
public static class PricePage
{
    /// <param name="list">The price list.</param>
    /// <param name="names">Each channel's name for people, by key.</param>
    /// <param name="day">The day of the page.</param>
    public static byte[] Of(PriceListAnswer list, IReadOnlyDictionary<string, string?> names, DateOnly day)
    {
        var date = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var page = new StringBuilder($"<h1>Prices, {date}</h1>\n"
            + "<p>The floor is the lowest price at which a piece pays for its share of the year. The target is the lowest price that also does not "
            + "undercut shops and galleries that buy from you to sell on.</p>\n");
        foreach (var channel in list.Items.GroupBy(item => item.Channel).OrderBy(channel => channel.Key, StringComparer.Ordinal))
            Table(page, [.. channel], DisplayText.Named(names.GetValueOrDefault(channel.Key), channel.Key));
        if (list.Items.Count == 0)
            page.Append("<p>Nothing is listed here.</p>\n");
        page.Append("<footer><small>From the costs and hours of "
            + $"{Text(string.Join(", ", list.Basis.Profiles.Select(DisplayText.Document)))}, and from what each way of selling takes. No tax or "
            + "legal advice.</small></footer>\n");
        return PrintedPage.Of($"Prices, {date}", page);
    }

    private static void Table(StringBuilder page, IReadOnlyList<PriceListItemAnswer> items, string channel)
    {
        page.Append($"<h2>{Text(channel)}, {Text(items[0].Currency)}</h2>\n<table>\n<thead><tr><th scope=\"col\">Design</th>"
            + $"<th scope=\"col\" class=\"code\">Code</th>");
        page.Append("<th scope=\"col\" class=\"money\">Floor</th><th scope=\"col\" class=\"money\">Target</th>"
            + "<th scope=\"col\" class=\"money\">Listed</th><th scope=\"col\">The listed price</th></tr></thead>\n<tbody>\n");
        foreach (var item in items)
            page.Append($"<tr><th scope=\"row\">{Text(item.Name ?? item.ListedAs)}</th><td class=\"code\">{Text(item.ListedAs)}</td>")
                .Append($"<td class=\"money\">{Money(item.FloorPrice, item)}</td><td class=\"money\">{Money(item.TargetPrice, item)}</td>"
                    + $"<td class=\"money listed\">{Money(item.ListedPrice, item)}</td>")
                .Append($"<td "
                    + $"class=\"verdict\">{Text(item.Reason is { } reason ? DisplayText.Reason(reason) : DisplayText.Verdict(item.Verdict))}</td>"
                    + $"</tr>\n");
        page.Append("</tbody>\n</table>\n");
    }

    private static string Money(decimal? amount, PriceListItemAnswer item) => amount is { } price ? DisplayText.Money(price, item.Currency) : "";

    private static string Text(string words) => PrintedPage.Text(words);
}
