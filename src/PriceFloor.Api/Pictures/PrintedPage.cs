using System.Net;
using System.Text;

namespace PriceFloor.Api.Pictures;

/// <summary>
/// What all pages to print share: black on white, no script and nothing from elsewhere. A page break never cuts a row, and each page repeats the head
/// of its table.
/// </summary>
public static class PrintedPage
{
    private const string Style = """
        @page { margin: 14mm 12mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif } }
        :root { color-scheme: light }
        body { font: 11pt/1.35 system-ui, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif; color: #000; background: #fff; max-width: 190mm; margin: 0 auto; padding: 4mm }
        h1 { font-size: 18pt; margin: 0 }
        h2 { font-size: 13pt; margin: 7mm 0 2mm; break-after: avoid }
        p { margin: 1mm 0 }
        figure { margin: 3mm 0; break-inside: avoid }
        figure svg { width: 100%; max-width: 150mm; height: auto }
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
        @media print { figure svg { max-width: 135mm; max-height: 180mm } footer { margin-top: 4mm; break-before: avoid } body { max-width: none; padding: 0; font-size: 9.5pt } th, td { padding: .8mm 2mm } h2 { margin-top: 5mm } }
        @media print { .one-sheet { font-size: 8.5pt } .one-sheet th, .one-sheet td { padding: .4mm 2mm } .one-sheet h2 { margin: 3mm 0 1mm; font-size: 11.5pt } }
        @media print { .one-sheet { line-height: 1.25 } .one-sheet figure { margin: 1mm 0 } .one-sheet figure svg { max-width: 88mm } .columns { columns: 3; column-gap: 6mm } .columns tbody th { min-width: 0 } }
        @media screen { .wide { overflow-x: auto } }
        @media screen and (max-width: 40em) { body { font-size: 10pt; padding: 2mm } th, td { padding: 1.2mm 1mm } tbody th { min-width: 24mm } .code { display: none } td.verdict { white-space: normal } }
        """;

    /// <param name="title">The title, as text.</param>
    /// <param name="body">What stands between the tags of the body, as HTML.</param>
    public static byte[] Of(string title, StringBuilder body) => Encoding.UTF8.GetBytes(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        + $"<meta name=\"viewport\" content=\"width=device-width\">\n<title>{Text(title)}</title>\n<style>\n{Style}\n</style>\n</head>\n<body>\n"
        + $"{body}</body>\n</html>\n");

    /// <summary>Words as HTML.</summary>
    public static string Text(string words) => WebUtility.HtmlEncode(words);
}
