using System.Globalization;
using System.Text;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.Years;

/// <summary>The year on one page to print: its picture, what it is made of, what nothing covers, and the designs that earn most.</summary>
public static class YearPage
{
    /// <param name="year">The year.</param>
    /// <param name="channels">Each channel's name for people, by key.</param>
    /// <param name="key">Key of the profile.</param>
    public static byte[] Of(YearAnswer year, IReadOnlyDictionary<string, string?> channels, string key)
    {
        var title = $"{year.Name ?? key}, {YearPicture.Days(year)}";
        var page = new StringBuilder($"<div class=\"one-sheet\">\n<h1>{Text(year.Name ?? key)}</h1>\n<p>{YearPicture.Days(year)}</p>\n")
            .Append(CultureInfo.InvariantCulture, $"<figure>{Encoding.UTF8.GetString(YearPicture.Of(year, isPrinted: true))}</figure>\n");
        Parts(page, year);
        Carrying(page, year, channels);
        NotCovered(page, year);
        Notes(page, year);
        page.Append("<footer><small>From the costs and hours of "
            + $"{Text(DisplayText.Document(year.Basis["profile"]))}. No tax or legal advice: local law and a licensed adviser decide."
            + "</small></footer>\n</div>\n");
        return PrintedPage.Of(title, page);
    }

    private static void Parts(StringBuilder page, YearAnswer year)
    {
        page.Append($"<h2>What the year must bring in, {Text(year.Currency)}</h2>\n<div class=\"columns\">\n<table>\n<tbody>\n");
        foreach (var part in year.Parts)
            page.Append($"<tr><th scope=\"row\">{Text(Words(part))}</th><td class=\"money\">{Money(year, part.Amount)}</td></tr>\n");
        page.Append("<tr><th scope=\"row\"><b>Must come from sales</b></th>"
            + $"<td class=\"money listed\">{Money(year, year.RequiredRevenue)}</td></tr>\n"
            + "<tr><th scope=\"row\">Each hour of making and selling must bring in</th>"
            + $"<td class=\"money\">{Money(year, year.PerBenchHour)}</td></tr>\n"
            + "</tbody>\n</table>\n</div>\n");
    }

    private static void Carrying(StringBuilder page, YearAnswer year, IReadOnlyDictionary<string, string?> channels)
    {
        page.Append("<h2>Designs that earn most for an hour at the bench</h2>\n");
        if (year.CarryMost.Count == 0)
        {
            page.Append("<p>No price is listed yet.</p>\n");
            return;
        }

        page.Append("<table>\n<thead><tr><th scope=\"col\">Design</th><th scope=\"col\" class=\"code\">Code</th><th scope=\"col\">Sold on</th>"
            + "<th scope=\"col\" class=\"money\">Price</th><th scope=\"col\" class=\"money\">Earns an hour</th></tr></thead>\n<tbody>\n");
        foreach (var one in year.CarryMost)
            page.Append($"<tr><th scope=\"row\">{Text(one.Name ?? one.Sku)}</th><td class=\"code\">{Text(one.Sku)}</td>")
                .Append($"<td>{Text(channels.GetValueOrDefault(one.Channel) ?? one.Channel)}</td>")
                .Append($"<td class=\"money\">{Money(year, one.ListedPrice)}</td>")
                .Append($"<td class=\"money listed\">{Money(year, one.EarnedPerBenchHour)}</td></tr>\n");
        page.Append("</tbody>\n</table>\n");
    }

    private static void NotCovered(StringBuilder page, YearAnswer year)
    {
        var missing = year.NotCovered.Where(kind => !year.Parts.Any(part => part.CostKind == kind && part.Amount > 0))
            .Select(DisplayText.Kind).ToList();
        if (missing.Count > 0)
            page.Append("<h2>Costs that may be missing</h2>\n<p>The figures above have nothing for these. If one of them costs you money, add it: "
                + $"{Text(string.Join(", ", missing))}.</p>\n");
    }

    private static void Notes(StringBuilder page, YearAnswer year)
    {
        if (year.Warnings.Count > 0)
            page.Append("<h2>Look at these first</h2>\n")
                .Append(string.Concat(year.Warnings.Select(warning => $"<p>{Text(DisplayText.Message(warning.Message))}</p>\n").Distinct()));
    }

    private static string Words(YearPartAnswer part) => part.Part switch
    {
        RevenuePartOf.Expenses => DisplayText.Kind(part.CostKind!.Value),
        RevenuePartOf.Household => "household",
        RevenuePartOf.Tax => "tax",
        _ => "less other income (taxable)",
    };

    private static string Money(YearAnswer year, decimal amount) => DisplayText.Money(amount, year.Currency);

    private static string Text(string words) => PrintedPage.Text(words);
}
