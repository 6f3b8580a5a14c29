using System.Globalization;
using System.Text;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.Quotes;

/// <summary>
/// A quote as its client reads it: one page to send or to print, no script and nothing from elsewhere. It has only what is offered and what it costs
/// the client: no floor, no hours, no materials, nothing bought, and not the maker's reference to the client.
/// </summary>
internal static class QuotePage
{
    /// <param name="quote">The quote.</param>
    /// <param name="names">What each line is called.</param>
    /// <param name="currency">Its currency.</param>
    public static byte[] Of(StoredQuote quote, IReadOnlyList<string> names, Currency currency)
    {
        var (offer, title) = (quote.Document, $"Quote {quote.Key}");
        var page = new StringBuilder($"<h1>{Text(title)}</h1>\n");
        if (quote.Text.Issued is { } issued)
            Paragraph(page, $"Issued on {Day(DateOnly.FromDateTime(issued.At.UtcDateTime))}.");
        if (Mark(quote) is { } mark)
            page.Append($"<p><strong>{Text(mark)}</strong></p>\n");
        Lines(page, offer, names);
        if (offer.Price is { } price)
            Payments(page, offer, price, currency);
        Terms(page, offer);
        return PrintedPage.Of(title, page);
    }

    /// <summary>What keeps the client from accepting it; null if nothing does.</summary>
    private static string? Mark(StoredQuote quote) => quote.State switch
    {
        QuoteState.Draft => "Draft: this is not an offer yet.",
        QuoteState.Declined => "This quote was declined.",
        QuoteState.Withdrawn => "This quote was withdrawn.",
        QuoteState.Lapsed => "This quote is no longer valid.",
        QuoteState.Superseded => "This quote was replaced by a later one.",
        QuoteState.Accepted or QuoteState.Done => "This quote was accepted.",
        _ => null,
    };

    private static void Lines(StringBuilder page, Quote offer, IReadOnlyList<string> names)
    {
        if (offer.Lines.Count == 0)
            return;
        page.Append("<h2>What is made</h2>\n<table>\n<thead><tr><th scope=\"col\">What</th>")
            .Append("<th scope=\"col\" class=\"money\">Pieces</th></tr></thead>\n<tbody>\n");
        foreach (var (line, name) in offer.Lines.Zip(names))
            page.Append($"<tr><th scope=\"row\">{Text(name)}</th><td class=\"money\">{DisplayText.Number(Rounding.Trim(line.Quantity))}</td></tr>\n");
        page.Append("</tbody>\n</table>\n");
    }

    /// <summary>The price and its parts, which add up to it.</summary>
    private static void Payments(StringBuilder page, Quote offer, decimal price, Currency currency)
    {
        page.Append("<h2>Price</h2>\n<table>\n<thead><tr><th scope=\"col\">Payment</th>")
            .Append($"<th scope=\"col\" class=\"money\">{Text(currency.Code)}</th></tr></thead>\n<tbody>\n");
        List<(string When, decimal Share)> parts = [.. offer.Payments.Select(payment => (payment.When, payment.Share))];
        if (offer.Deposit is { } deposit)
            parts.Insert(0, ("Deposit, before the work begins", deposit.Share));
        var amounts = currency.NearestTogether([.. parts.Select(part => part.Share * price)], price);
        foreach (var ((when, share), amount) in parts.Zip(amounts))
            page.Append($"<tr><th scope=\"row\">{Text(Capital(when))} ({DisplayText.Number(Rounding.Trim(share * 100))} %)</th>"
                + $"<td class=\"money\">{DisplayText.Money(amount, currency.Code)}</td></tr>\n");
        page.Append("<tr><th scope=\"row\"><strong>Price in all</strong></th>"
            + $"<td class=\"money listed\">{DisplayText.Money(price, currency.Code)}</td></tr>\n</tbody>\n</table>\n");
    }

    private static void Terms(StringBuilder page, Quote offer)
    {
        page.Append("<footer>\n");
        var included = offer.Extra.Select(extra => extra.Name).OfType<string>().ToList();
        if (included.Count > 0)
            Paragraph(page, $"Included: {string.Join(", ", included)}.");
        if (offer.RevisionsIncluded > 0)
            Paragraph(page, $"Changes to the design that are included: {DisplayText.Number(Rounding.Trim(offer.RevisionsIncluded))}.");
        if (offer.Promised is { } promised)
            Paragraph(page, $"Promised for {Day(promised)}.");
        if (offer.ValidUntil is { } until)
            Paragraph(page, $"Valid until {Day(until)}, the whole day.");
        if (offer.Rights is { } rights)
            Paragraph(page, $"Rights: {rights.Text}");
        page.Append("</footer>\n");
    }

    private static void Paragraph(StringBuilder page, string words) => page.Append($"<p>{Text(words)}</p>\n");

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    private static string Text(string words) => PrintedPage.Text(words);
}
