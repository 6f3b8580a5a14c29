namespace PriceFloor.Api.Pictures;

/// <summary>A part of a bar in the list below it: its words and its amount.</summary>
/// <param name="Part">The part.</param>
/// <param name="Lines">Its words, in lines.</param>
/// <param name="Money">Its amount: at the end of the first line, or below the words if little room is left there.</param>
/// <param name="Width">The width of the column.</param>
/// <param name="IsBelow">Whether the amount is below the words.</param>
internal sealed record ListedPart(StackedPart Part, IReadOnlyList<string> Lines, string Money, decimal Width, bool IsBelow)
{
    private const decimal Indent = 21, Gap = 6, LeastRoom = 80;

    public int LineCount => Lines.Count + (IsBelow ? 1 : 0);

    public static ListedPart Of(StackedPart part, decimal width, string currency)
    {
        var money = DisplayText.Money(part.Amount, currency);
        var words = part.Amount < 0 ? part.Words : $"{part.Letter} {part.Words}";
        var beside = width - Indent - Gap - TextMetrics.Width(money, Picture.Small);
        var isBelow = beside < LeastRoom && TextMetrics.Width(words, Picture.Small) > beside;
        return new ListedPart(part, TextMetrics.Lines(isBelow ? width - Indent : beside, words, Picture.Small), money, width, isBelow);
    }

    /// <summary>A part below 0 is struck out: it is missing.</summary>
    public void Draw(Picture picture, decimal x, decimal y)
    {
        var isMissing = Part.Amount < 0;
        picture.Box(x, y - 11, 14, 13, isMissing ? null : Part.Palette, isMissing ? Hatch.Crossed : Part.Hatch,
            isMissing ? Palette.Floor : Palette.Text);
        foreach (var (index, line) in Lines.Index())
            picture.Words(x + Indent, y + index * Picture.LineOf(Picture.Small), line, Picture.Small);
        picture.Words(x + Width, y + (IsBelow ? Lines.Count * Picture.LineOf(Picture.Small) : 0), Money, Picture.Small, anchor: "end");
    }
}
