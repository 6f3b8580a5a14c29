using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.FloorHistories;

/// <summary>The last moves below the picture: when, to what price, by which document, and what changed. The JSON answer has them all.</summary>
internal static class FloorHistoryMoves
{
    private const int MovesTold = 8, ChangesTold = 4;
    private const decimal Left = Picture.Margin + 108, Room = Picture.Inner - 108, Indent = 10, Gap = 6;

    /// <summary>The first changes of a move, and how many more there are.</summary>
    public static IEnumerable<string> Told(FloorMomentAnswer item) => item.Changed.Count <= ChangesTold + 1
        ? item.Changed
        : item.Changed.Take(ChangesTold).Append($"and {DisplayText.Number(item.Changed.Count - ChangesTold)} more");

    /// <summary>Draws them. Returns the height of the picture.</summary>
    public static decimal Tell(Picture picture, FloorHistoryAnswer answer, decimal y, Func<FloorMomentAnswer, string, string> prices)
    {
        foreach (var item in answer.Items.Reverse().Take(MovesTold))
            y = Move(picture, item, y, prices(item, answer.Currency));

        var untold = answer.Items.Count - MovesTold;
        if (untold <= 0 && answer.Earlier is null)
            return y - Gap - 2;
        picture.Words(Picture.Margin, y, untold > 0
            ? $"and {DisplayText.Number(untold)} moves before{(answer.Earlier is null ? "" : ", with more before that")}"
            : "and more before that", Picture.Small, Palette.Quiet);
        return y + 14;
    }

    private static decimal Move(Picture picture, FloorMomentAnswer item, decimal y, string prices)
    {
        picture.Words(Picture.Margin, y, DisplayText.Date(item.At), Picture.Small, bold: true);
        if (item is { Verdict: Verdict.BelowFloor, ListedPrice: not null })
            picture.Disc(Picture.Margin + 96, y - 4.5m, 4, Palette.Text, Palette.Paper);
        y = picture.Paragraph(Left, y, prices, Room, Picture.Small);
        string[] words = item.Changed.Count > 0 ? [] : [$"moved by {string.Join(", ", item.MovedBy.Select(DisplayText.Document))}"];
        if (item.Verdict is { } verdict)
            words = [DisplayText.Verdict(verdict), .. words];
        if (words.Length > 0)
            y = picture.Paragraph(Left, y, string.Join("; ", words), Room, Picture.Small, Palette.Quiet);
        foreach (var change in Told(item))
        {
            picture.Words(Left, y, "\u00b7", Picture.Small);
            y = picture.Paragraph(Left + Indent, y, change, Room - Indent, Picture.Small);
        }

        return y + Gap;
    }
}
