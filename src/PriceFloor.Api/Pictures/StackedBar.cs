namespace PriceFloor.Api.Pictures;

/// <summary>A bar of parts, each with a letter, a colour and a pattern, and the list that says what they are.</summary>
public static class StackedBar
{
    private const decimal LineHeight = 19, Column = Picture.Inner / 2 - 10;

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

    /// <summary>
    /// Every part with its amount, in two columns: read downwards. Words that do not fit beside their amount take more lines, and nothing is cut.
    /// Returns the last line's y.
    /// </summary>
    public static decimal List(Picture picture, decimal y, string currency, IReadOnlyList<StackedPart> parts)
    {
        var rows = (parts.Count + 1) / 2;
        var listed = parts.Select(part => ListedPart.Of(part, Column, currency)).ToList();
        var tops = new decimal[rows + 1];
        tops[0] = y;
        for (var row = 0; row < rows; row++)
            tops[row + 1] = tops[row] + LineHeight + Picture.LineOf(Picture.Small)
                * (int.Max(listed[row].LineCount, row + rows < listed.Count ? listed[row + rows].LineCount : 1) - 1);
        foreach (var (index, part) in listed.Index())
            part.Draw(picture, index < rows ? Picture.Margin : Picture.Margin + Picture.Inner / 2 + 10, tops[index % rows]);
        return tops[rows] - LineHeight;
    }

    private static void Segment(Picture picture, decimal from, decimal to, decimal top, decimal height, StackedPart part)
    {
        picture.Box(from, top, to - from, height, part.Palette, part.Hatch, Palette.Text);
        if (to - from < 16)
            return;
        picture.Box((from + to) / 2 - 7, top + height / 2 - 9, 14, 18, part.Palette);
        picture.Words((from + to) / 2, top + height / 2 + 5, part.Letter.ToString(), anchor: "middle");
    }
}
