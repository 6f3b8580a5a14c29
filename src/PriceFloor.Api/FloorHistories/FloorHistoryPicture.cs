using System.Globalization;
using System.Text;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.FloorHistories;

/// <summary>Floor, target and listed price over time: three lines in steps with different strokes, and the last moves in words.</summary>
public static class FloorHistoryPicture
{
    private const decimal Top = 130, Bottom = 350, LineHeight = 40;
    private const int MovesTold = 8;

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
        picture.Words(Picture.Margin, 52, DisplayText.Named(answer.Name, answer.Sku), fit: Picture.Inner);
        picture.Words(Picture.Margin, 70, $"{answer.Currency} on {channel}", Picture.Small, Palette.Quiet, fit: Picture.Inner);
        var prices = answer.Items.SelectMany(item => s_lines.Select(line => line.Price(item))).OfType<decimal>().ToList();
        if (prices.Count == 0)
        {
            picture.Words(Picture.Margin, 104, "There was no price yet.", ink: Palette.Quiet);
            return picture.Render(120);
        }

        Key(picture, answer);
        Plot(picture, answer, prices, today);
        return picture.Render(Moves(picture, answer));
    }

    private static void Plot(Picture picture, FloorHistoryAnswer answer, List<decimal> prices, DateTimeOffset today)
    {
        var room = prices.Max() > prices.Min() ? (prices.Max() - prices.Min()) * 0.08m : prices.Max() * 0.1m;
        var up = new Scale(decimal.Max(0, prices.Min() - room), prices.Max() + room, Bottom, Top);
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

        picture.Line(left, Bottom, Picture.Right, Bottom, Palette.Quiet);
        picture.Words(left, Bottom + 19, When(first, days), Picture.Small, Palette.Quiet);
        if (days > 0)
            picture.Words(Picture.Right, Bottom + 19, When(last, days), Picture.Small, Palette.Quiet, "end");
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

    private static void Key(Picture picture, FloorHistoryAnswer answer)
    {
        var last = answer.Items[^1];
        foreach (var (index, line) in s_lines.Reverse().Index())
        {
            var x = Picture.Margin + index * 150;
            picture.Line(x, 88, x + 28, 88, line.Palette, line.Dash, line.Thick);
            picture.Words(x + 36, 93, line.Words, Picture.Small);
            picture.Words(x + 36, 110, line.Price(last) is { } now ? DisplayText.Money(now, answer.Currency) : "none now", Picture.Small, fit: 110);
        }
    }

    /// <summary>The last moves: when, to what price, and by which document.</summary>
    private static decimal Moves(Picture picture, FloorHistoryAnswer answer)
    {
        var y = Bottom + 52;
        foreach (var item in answer.Items.Reverse().Take(MovesTold))
        {
            var documents = string.Join(", ", item.MovedBy.Select(DisplayText.Document));
            picture.Words(Picture.Margin, y, DisplayText.Date(item.At), Picture.Small, bold: true);
            if (item is { Verdict: Verdict.BelowFloor, ListedPrice: not null })
                picture.Disc(Picture.Margin + 96, y - 4.5m, 4, Palette.Text, Palette.Paper);
            picture.Words(Picture.Margin + 108, y, Prices(item, answer.Currency), Picture.Small, fit: Picture.Inner - 108);
            picture.Words(Picture.Margin + 108, y + 17, $"{(item.Verdict is { } verdict ? DisplayText.Verdict(verdict) + "; " : "")}by {documents}",
                Picture.Small, Palette.Quiet, fit: Picture.Inner - 108);
            y += LineHeight;
        }

        var untold = answer.Items.Count - MovesTold;
        if (untold > 0 || answer.Earlier is not null)
            picture.Words(Picture.Margin, y, untold > 0
                ? $"and {DisplayText.Number(untold)} moves before{(answer.Earlier is null ? "" : ", with more before that")}"
                : "and more before that", Picture.Small, Palette.Quiet);
        return untold > 0 || answer.Earlier is not null ? y + 14 : y - LineHeight + 32;
    }

    private static decimal Day(DateTimeOffset time) => time.UtcTicks / (decimal)TimeSpan.TicksPerDay;

    private static string Prices(FloorMomentAnswer item, string currency) => item.Reason is { } reason ? DisplayText.Reason(reason)
        : string.Join(", ", s_lines.Reverse().Where(line => line.Price(item) is not null)
            .Select(line => $"{line.Words} {DisplayText.Money(line.Price(item)!.Value, currency)}"));

    private static string Description(FloorHistoryAnswer answer, string channel) =>
        $"{DisplayText.Named(answer.Name, answer.Sku)} on {channel}, {answer.Currency}. "
        + string.Join(' ', answer.Items.Select(item => Sentence(item, answer.Currency)));

    private static string Sentence(FloorMomentAnswer item, string currency) =>
        $"{DisplayText.Date(item.At)}: {Prices(item, currency)}{(item.Verdict is { } verdict ? ", " + DisplayText.Verdict(verdict) : "")}.";
}
