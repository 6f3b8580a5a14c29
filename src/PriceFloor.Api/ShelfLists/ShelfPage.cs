using System.Globalization;
using System.Text;
using PriceFloor.Api.Pictures;
using PriceFloor.Evidence.Decisions;

namespace PriceFloor.Api.ShelfLists;

/// <summary>The shelf on a page to print: its picture, what each design sold and earned, and a suggestion for each after what it rests on.</summary>
public static class ShelfPage
{
    /// <param name="shelf">The shelf.</param>
    /// <param name="name">The profile's name for people.</param>
    /// <param name="to">The last day that counts.</param>
    public static byte[] Of(ShelfAnswer shelf, string name, DateOnly to)
    {
        var page = new StringBuilder($"<h1>{Text(name)}</h1>\n<p>What the designs brought, up to {DisplayText.Date(to)}</p>\n");
        if (shelf.Items.Count > 0)
        {
            Sold(page, shelf);
            Advice(page, shelf);
        }

        page.Append($"<figure>{Encoding.UTF8.GetString(ShelfPicture.Of(shelf, isPrinted: true))}</figure>\n"); // last: it may fill a sheet of paper

        foreach (var warning in shelf.Warnings.Where(warning => warning.Pointer == "#"))
            page.Append($"<p>{Text(DisplayText.Message(warning.Message))}</p>\n");
        page.Append($"<footer><small>From the costs and hours of {Text(DisplayText.Document(shelf.Basis.Profile!))}, and from what was written down "
            + "as made and sold. Rules of thumb suggest, you decide; nothing is changed by itself.</small></footer>\n");
        return PrintedPage.Of($"{name}, designs up to {DisplayText.Date(to)}", page);
    }

    private static void Sold(StringBuilder page, ShelfAnswer shelf)
    {
        page.Append($"<h2>What they sold and earned, {Text(shelf.Currency)}</h2>\n<div class=\"wide\"><table>\n"
            + "<thead><tr><th scope=\"col\">Design</th><th scope=\"col\" class=\"money\">Sold</th><th scope=\"col\" class=\"money\">Brought</th>"
            + "<th scope=\"col\" class=\"money\">After materials</th><th scope=\"col\" class=\"money\">Earned an hour</th>"
            + "<th scope=\"col\" class=\"money\">On hand</th></tr></thead>\n<tbody>\n");
        foreach (var item in shelf.Items)
            page.Append($"<tr><th scope=\"row\">{Text(DisplayText.Named(item.Name, item.Sku))}</th>")
                .Append(CultureInfo.InvariantCulture, $"<td class=\"money\">{item.Sold}</td>")
                .Append($"<td class=\"money\">{Money(shelf, item.Take)}</td><td class=\"money\">{Money(shelf, item.Contribution)}</td>")
                .Append($"<td class=\"money listed\">{Money(shelf, item.Earned)}</td>")
                .Append($"<td class=\"money\">{item.OnHand?.ToString(CultureInfo.InvariantCulture) ?? "-"}</td></tr>\n");
        page.Append("</tbody>\n</table></div>\n");
    }

    private static void Advice(StringBuilder page, ShelfAnswer shelf)
    {
        page.Append("<h2>What this suggests</h2>\n<table>\n<thead><tr><th scope=\"col\">Design</th><th scope=\"col\">Because</th>"
            + "<th scope=\"col\">You might</th></tr></thead>\n<tbody>\n");
        foreach (var item in shelf.Items)
            page.Append($"<tr><th scope=\"row\">{Text(DisplayText.Named(item.Name, item.Sku))}</th><td>{Text(Because(shelf, item))}</td>"
                + $"<td>{Text(Suggestion(shelf, item))}</td></tr>\n");
        page.Append("</tbody>\n</table>\n");
    }

    /// <summary>What the suggestion rests on: what <c>because</c> points to, in words.</summary>
    private static string Because(ShelfAnswer shelf, ShelfLineAnswer item)
    {
        if (item.Decision == DecisionWord.Wait)
            return "there were few orders, or few days on offer, so far";
        var words = new StringBuilder($"an hour earned {Money(shelf, item.Earned)}");
        if (item.EarnedLow is { } low && item.EarnedHigh is { } high && low != high)
            words.Append($" ({Money(shelf, low)} to {Money(shelf, high)})");
        words.Append($" of the {Money(shelf, shelf.PerBenchHour)} that it must");
        foreach (var pointer in item.Because)
            words.Append(pointer switch
            {
                "#/days" => ", and more is wanted than is there",
                "#/floor" => ", and its floor price is within reach",
                _ => pointer.StartsWith("#/findings/", StringComparison.Ordinal) ? ", by the minutes of the bench log" : "",
            });
        return words.ToString();
    }

    private static string Suggestion(ShelfAnswer shelf, ShelfLineAnswer item) => item.Decision switch
    {
        DecisionWord.Keep => "leave it as it is",
        DecisionWord.Raise => "ask more for it, one step at a time",
        DecisionWord.MakeFaster => "make it in the time of your best days: the safe steps stay as they are",
        DecisionWord.Redesign => "change the design: people want it, but it takes more than it brings",
        DecisionWord.FillIn => "make it only in hours that would be idle",
        DecisionWord.Drop => "stop making it" + (item.Instead is { } other
            ? $" and give its hours to {DisplayText.Named(shelf.Items.FirstOrDefault(one => one.Sku == other)?.Name, other)}" : ""),
        _ => "wait and keep writing down",
    };

    private static string Money(ShelfAnswer shelf, decimal? amount) => amount is { } money ? DisplayText.Money(money, shelf.Currency) : "-";

    private static string Text(string words) => PrintedPage.Text(words);
}
