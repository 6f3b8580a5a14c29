namespace PriceFloor.Api.Pictures;

/// <summary>A bar of parts, each with a letter, a colour and a pattern, and the list that says what they are.</summary>
public static class StackedBar
{
    private const decimal LineHeight = 19;

    /// <summary>The parts one after another. Returns where the last one ends on the scale.</summary>
    public static decimal Draw(Picture picture, Scale scale, decimal top, decimal height, IEnumerable<StackedPart> parts)
    {
        var at = 0m;
        foreach (var part in parts.Where(part => part.Amount > 0))
        {
            Segment(picture, scale.At(at), scale.At(at + part.Amount), top, height, part);
            at += part.Amount;
        }

        return at;
    }

    /// <summary>Every part with its amount, in two columns: read downwards. Returns the last line's y.</summary>
    public static decimal List(Picture picture, decimal y, string currency, IReadOnlyList<StackedPart> parts)
    {
        var rows = (parts.Count + 1) / 2;
        foreach (var (index, part) in parts.Index())
        {
            var x = index < rows ? Picture.Margin : Picture.Margin + Picture.Inner / 2 + 10;
            Listed(picture, x, y + index % decimal.Max(rows, 1) * LineHeight, currency, part);
        }

        return y + (rows - 1) * LineHeight;
    }

    private static void Segment(Picture picture, decimal from, decimal to, decimal top, decimal height, StackedPart part)
    {
        picture.Box(from, top, to - from, height, part.Palette, part.Hatch, Palette.Text);
        if (to - from < 16)
            return;
        picture.Box((from + to) / 2 - 7, top + height / 2 - 9, 14, 18, part.Palette);
        picture.Words((from + to) / 2, top + height / 2 + 5, part.Letter.ToString(), anchor: "middle");
    }

    /// <summary>A part below 0 is struck out: it is missing.</summary>
    private static void Listed(Picture picture, decimal x, decimal y, string currency, StackedPart part)
    {
        var isMissing = part.Amount < 0;
        var (column, money) = (Picture.Inner / 2 - 10, DisplayText.Money(part.Amount, currency));
        picture.Box(x, y - 11, 14, 13, isMissing ? null : part.Palette, isMissing ? Hatch.Crossed : part.Hatch,
            isMissing ? Palette.Floor : Palette.Text);
        picture.Words(x + 21, y, isMissing ? part.Words : $"{part.Letter} {part.Words}", Picture.Small,
            fit: column - 21 - 6 - TextMetrics.Width(money, Picture.Small));
        picture.Words(x + column, y, money, Picture.Small, anchor: "end");
    }
}
