using System.Globalization;
using System.Text;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.FloorHistories;

/// <summary>
/// Floor, target and listed price over time: three lines in steps with different strokes, and below them the last moves in words. Long words take
/// more lines; nothing is cut.
/// </summary>
public static class FloorHistoryPicture
{
    private const decimal Height = 220, KeyWidth = 150, Stroke = 28, Beside = 36;

    private static readonly (string Words, Func<FloorMomentAnswer, decimal?> Price, Palette Palette, Dash Dash, decimal Thick)[] s_lines =
    [
        ("target", item => item.TargetPrice, Palette.Target, Dash.Dashed, 2.5m),
        ("listed", item => item.ListedPrice, Palette.Text, Dash.Dotted, 3),
        ("floor", item => item.FloorPrice, Palette.Floor, Dash.Solid, 3),
    ];

    /// <param name="answer">The history.</param>
    /// <param name="channel">The channel's name for people.</param>
    /// <param name="today">The end of the last prices: a day, so the picture is the same all day.</param>
    public static byte[] Of(FloorHistoryAnswer answer, string channel, DateTimeOffset today)
    {
        var picture = new Picture("Floor prices over time", Description(answer, channel));
        var y = picture.Paragraph(Picture.Margin, 52, DisplayText.Named(answer.Name, answer.Sku), Picture.Inner);
        y = picture.Paragraph(Picture.Margin, y, $"{answer.Currency} on {channel}", Picture.Inner, Picture.Small, Palette.Quiet);
        var prices = answer.Items.SelectMany(item => s_lines.Select(line => line.Price(item))).OfType<decimal>().ToList();
        if (prices.Count == 0)
        {
            picture.Words(Picture.Margin, y + 17, "There was no price yet.", ink: Palette.Quiet);
            return picture.Render(y + 33);
        }

        var top = Key(picture, answer, y + 1) + 20;
        Plot(picture, answer, prices, today, top);
        return picture.Render(FloorHistoryMoves.Tell(picture, answer, top + Height + 52, Prices));
    }

    private static void Plot(Picture picture, FloorHistoryAnswer answer, List<decimal> prices, DateTimeOffset today, decimal top)
    {
        var bottom = top + Height;
        var room = prices.Max() > prices.Min() ? (prices.Max() - prices.Min()) * 0.08m : prices.Max() * 0.1m;
        var up = new Scale(decimal.Max(0, prices.Min() - room), prices.Max() + room, bottom, top);
        var ticks = up.Ticks(5).ToList();
        var left = Picture.Margin + ticks.Max(tick => TextMetrics.Width(DisplayText.Number(tick), Picture.Small)) + 8;
        var (first, last) = (answer.Items[0].At, answer.Items[^1].At > today ? answer.Items[^1].At : today);
        var days = Day(last) - Day(first);
        var across = new Scale(Day(first), Day(first) + (days > 0 ? days * 1.04m : 1), left, Picture.Right); // room for the last step
        foreach (var tick in ticks)
        {
            picture.Line(left, up.At(tick), Picture.Right, up.At(tick), Palette.Grid);
            picture.Words(left - 8, up.At(tick) + 4.5m, DisplayText.Number(tick), Picture.Small, Palette.Quiet, "end");
        }

        picture.Line(left, bottom, Picture.Right, bottom, Palette.Quiet);
        picture.Words(left, bottom + 19, When(first, days), Picture.Small, Palette.Quiet);
        if (days > 0)
            picture.Words(Picture.Right, bottom + 19, When(last, days), Picture.Small, Palette.Quiet, "end");
        foreach (var line in s_lines)
            picture.Path(Steps(answer, line.Price, across, up), line.Palette, line.Dash, line.Thick);
        foreach (var item in answer.Items.Where(item => item is { Verdict: Verdict.BelowFloor, ListedPrice: not null }))
            picture.Disc(across.At(Day(item.At)), up.At(item.ListedPrice!.Value), 4, Palette.Text, Palette.Paper);
    }

    /// <summary>The day; with the time if the whole picture covers only hours.</summary>
    private static string When(DateTimeOffset time, decimal days) =>
        DisplayText.Date(time) + (days is > 0 and < 2 ? time.UtcDateTime.ToString(" HH:mm", CultureInfo.InvariantCulture) : "");

    /// <summary>Each price is valid until the next; without a price the line stops.</summary>
    private static string Steps(FloorHistoryAnswer answer, Func<FloorMomentAnswer, decimal?> price, Scale across, Scale up)
    {
        var path = new StringBuilder("M0 0");
        decimal? before = null;
        foreach (var item in answer.Items)
        {
            var x = Svg.Number(across.At(Day(item.At)));
            if (before is not null)
                path.Append('H').Append(x);
            if (price(item) is { } now)
                path.Append(before is null ? $"M{x} {Svg.Number(up.At(now))}" : $"V{Svg.Number(up.At(now))}");
            before = price(item);
        }

        return before is null ? path.ToString() : path.Append('H').Append(Svg.Number(Picture.Right)).ToString();
    }

    /// <summary>What each stroke is, and its price now: beside each other, or below each other if a price is too long. Returns the last y.</summary>
    private static decimal Key(Picture picture, FloorHistoryAnswer answer, decimal y)
    {
        var last = answer.Items[^1];
        var now = s_lines.Reverse().Select(line => line.Price(last) is { } price ? DisplayText.Money(price, answer.Currency) : "none now").ToList();
        var isWide = now.Any(words => TextMetrics.Width(words, Picture.Small) > KeyWidth - Beside - 4);
        foreach (var (index, line) in s_lines.Reverse().Index())
        {
            var (x, at) = isWide ? (Picture.Margin, y + index * 22) : (Picture.Margin + index * KeyWidth, y);
            picture.Line(x, at, x + Stroke, at, line.Palette, line.Dash, line.Thick);
            picture.Words(x + Beside, at + 5, line.Words, Picture.Small);
            picture.Words(isWide ? x + Beside + 50 : x + Beside, isWide ? at + 5 : at + 22, now[index], Picture.Small);
        }

        return y + (isWide ? 44 : 22);
    }

    private static decimal Day(DateTimeOffset time) => time.UtcTicks / (decimal)TimeSpan.TicksPerDay;

    private static string Prices(FloorMomentAnswer item, string currency) => item.Reason is { } reason ? DisplayText.Reason(reason)
        : string.Join(", ", s_lines.Reverse().Where(line => line.Price(item) is not null)
            .Select(line => $"{line.Words} {DisplayText.Money(line.Price(item)!.Value, currency)}"));

    private static string Description(FloorHistoryAnswer answer, string channel) =>
        $"{DisplayText.Named(answer.Name, answer.Sku)} on {channel}, {answer.Currency}. "
        + string.Join(' ', answer.Items.Select(item => Sentence(item, answer.Currency)));

    private static string Sentence(FloorMomentAnswer item, string currency) =>
        $"{DisplayText.Date(item.At)}: {Prices(item, currency)}{(item.Verdict is { } verdict ? ", " + DisplayText.Verdict(verdict) : "")}"
        + $"{string.Concat(FloorHistoryMoves.Told(item).Select(change => "; " + change))}.";
}
