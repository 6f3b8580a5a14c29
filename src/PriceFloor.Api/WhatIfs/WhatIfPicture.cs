using System.Globalization;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.WhatIfs;

/// <summary>
/// Floors now and in each scenario: for each price that is listed in the answer a bar for each scenario, as long as its floor price moves, to the
/// right where it rises. Each scenario has a letter and a pattern; a verdict that falls is written out.
/// </summary>
public static class WhatIfPicture
{
    private const int MostLines = 40;
    private const decimal BarHeight = 16, RowHeight = 21, LineGap = 30;

    private static readonly (Palette Palette, Hatch Hatch)[] s_looks =
    [
        (Palette.Sky, Hatch.None), (Palette.Amber, Hatch.Rising), (Palette.Mint, Hatch.Falling), (Palette.Lilac, Hatch.Dots),
        (Palette.Rose, Hatch.Level), (Palette.Straw, Hatch.Upright), (Palette.Teal, Hatch.Squares), (Palette.Peach, Hatch.Rings),
        (Palette.Grey, Hatch.Crossed),
    ];

    public static byte[] Of(WhatIfAnswer answer)
    {
        var picture = new Picture("Floors now and in each scenario", Description(answer));
        picture.Words(Picture.Margin, 52, $"Floor prices in {answer.Currency}; a bar is how far one moves", Picture.Small, Palette.Quiet,
            fit: Picture.Inner);
        var y = Key(picture, answer, 66);
        var lines = answer.List.Take(MostLines).ToList();
        var moves = lines.SelectMany(line => Columns(line).Select(column => Move(line, column.Price))).OfType<decimal>().DefaultIfEmpty(0)
            .ToList();
        var room = lines.SelectMany(line => Columns(line).Select(column => TextMetrics.Width(Words(line, column, answer.Currency), Picture.Small)))
            .DefaultIfEmpty(0).Max();
        var scale = new Scale(decimal.Min(0, moves.Min()), decimal.Max(moves.Max(), 0.001m), Picture.Margin + 22,
            decimal.Max(Picture.Right - room - 10, Picture.Margin + 60));
        foreach (var line in lines)
            picture.Group(Sentence(line, answer), () => y = Bars(picture, line, answer.Currency, scale, y + LineGap));
        if (answer.List.Count == 0)
            picture.Words(Picture.Margin, y += LineGap, "No price moves.", ink: Palette.Quiet);
        if (answer.List.Count > MostLines)
            picture.Words(Picture.Margin, y += LineGap, $"and {DisplayText.Number(answer.List.Count - MostLines)} more", Picture.Small,
                Palette.Quiet);
        return picture.Render(y + Picture.Margin);
    }

    private static decimal Key(Picture picture, WhatIfAnswer answer, decimal y)
    {
        foreach (var (index, name) in Names(answer).Index())
        {
            y += 22;
            picture.Box(Picture.Margin, y - 13, 16, 16, s_looks[index].Palette, s_looks[index].Hatch, Palette.Text);
            picture.Words(Picture.Margin + 24, y, $"{Letter(index)}  {name}", fit: Picture.Inner - 24);
        }

        return y;
    }

    private static decimal Bars(Picture picture, WhatIfLineAnswer line, string currency, Scale scale, decimal y)
    {
        var now = line.Now.FloorPrice is { } floor ? $"{DisplayText.Money(floor, currency)} now" : DisplayText.Reason(line.Now.Reason ?? "");
        picture.Words(Picture.Right, y, now, Picture.Small, anchor: "end");
        picture.Words(Picture.Margin, y, $"{line.Sku} on {line.Channel}", bold: true,
            fit: Picture.Inner - TextMetrics.Width(now, Picture.Small) - 12);
        var top = y + 8;
        foreach (var column in Columns(line))
        {
            picture.Words(Picture.Margin, y + 21, Letter(column.Index), Picture.Small);
            if (Move(line, column.Price) is { } move)
            {
                var (from, to) = (scale.At(decimal.Min(0, move)), scale.At(decimal.Max(0, move)));
                picture.Box(from, y + 8, to - from, BarHeight, s_looks[column.Index].Palette, s_looks[column.Index].Hatch, Palette.Text);
            }

            picture.Words(Picture.Right, y + 21, Words(line, column, currency), Picture.Small, anchor: "end");
            y += RowHeight;
        }

        picture.Line(scale.At(0), top - 2, scale.At(0), y + 5, Palette.Quiet, thick: 2);
        return y;
    }

    private static IEnumerable<(int Index, WhatIfScenarioPriceAnswer Price)> Columns(WhatIfLineAnswer line) =>
        (line.Combined is { } combined ? line.Scenarios.Append(combined) : line.Scenarios).Select((price, index) => (index, price));

    private static IEnumerable<string> Names(WhatIfAnswer answer) => answer.Scenarios.Select(scenario => scenario.Name ?? "a scenario")
        .Concat(answer.Combined is null ? [] : ["all together"]);

    private static string Letter(int index) => ((char)('a' + index)).ToString();

    /// <summary>By what share the floor price moves; null if there is none now or then.</summary>
    private static decimal? Move(WhatIfLineAnswer line, WhatIfScenarioPriceAnswer price) =>
        line.Now.FloorPrice is { } now && price.FloorPrice is { } then ? then / now - 1 : null;

    /// <summary>The floor price then, by how much it moves, and whether the verdict falls.</summary>
    private static string Words(WhatIfLineAnswer line, (int Index, WhatIfScenarioPriceAnswer Price) column, string currency)
    {
        if (column.Price.FloorPrice is not { } then)
            return DisplayText.Reason(column.Price.Reason ?? "");
        var by = Move(line, column.Price) is { } move and not 0
            ? string.Create(CultureInfo.InvariantCulture, $" ({(move < 0 ? "-" : "+")}{Rounding.Nearest(100 * decimal.Abs(move), 1):0.0} %)")
            : "";
        var falls = column.Price.Verdict < line.Now.Verdict ? $", {DisplayText.Verdict(column.Price.Verdict)}" : "";
        return $"{DisplayText.Money(then, currency)}{by}{falls}";
    }

    private static string Sentence(WhatIfLineAnswer line, WhatIfAnswer answer) =>
        $"{line.Sku} on {line.Channel}: {(line.Now.FloorPrice is { } now ? DisplayText.Money(now, answer.Currency) : "no price")} now, "
        + string.Join("; ", Columns(line).Zip(Names(answer), (column, name) => $"{name}: {Words(line, column, answer.Currency)}")) + ".";

    private static string Description(WhatIfAnswer answer) => answer.List.Count == 0
        ? $"Floor prices in {answer.Currency} now and in each scenario ({string.Join(", ", Names(answer))}): no price moves."
        : $"Floor prices in {answer.Currency} now and in each scenario. "
            + string.Join(' ', answer.List.Take(MostLines).Select(line => Sentence(line, answer)));
}
