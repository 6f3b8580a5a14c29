using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.PriceLists;

/// <summary>
/// The price ladder of one channel: a rung for each design, all on one scale. Hatched up to the floor, plain up to the target. The shape of the mark
/// for the listed price shows its verdict.
/// </summary>
public static class PriceLadderPicture
{
    private const decimal First = 174, Rung = 62, BarHeight = 14;

    public static byte[] Of(PriceListAnswer list, string channel, string currency)
    {
        var picture = new Picture("Floor, target and listed prices", Description(list, channel, currency));
        picture.Words(Picture.Margin, 52, channel, fit: Picture.Inner);
        picture.Words(Picture.Margin, 70, $"{currency}, as this channel lists its prices", Picture.Small, Palette.Quiet);
        Key(picture);
        var prices = list.Items.SelectMany(item => new[] { item.FloorPrice, item.TargetPrice, item.ListedPrice }).OfType<decimal>().ToList();
        var scale = new Scale(0, prices.Count > 0 ? prices.Max() * 1.02m : 1, Picture.Margin, Picture.Right);
        foreach (var tick in scale.Ticks(5))
            picture.Words(decimal.Clamp(scale.At(tick), Picture.Margin + TextMetrics.Width(DisplayText.Number(tick), Picture.Small) / 2,
                Picture.Right - TextMetrics.Width(DisplayText.Number(tick), Picture.Small) / 2),
                148, DisplayText.Number(tick), Picture.Small, Palette.Quiet, "middle");
        var y = First;
        foreach (var item in list.Items)
        {
            picture.Group(Sentence(item), () => Draw(picture, item, scale, y));
            y += Rung;
        }

        if (list.Items.Count == 0)
            picture.Words(Picture.Margin, y, "No design is listed here.", ink: Palette.Quiet);
        return picture.Render(list.Items.Count == 0 ? y + Picture.Margin : y - 14);
    }

    private static void Draw(Picture picture, PriceListItemAnswer item, Scale scale, decimal y)
    {
        var verdict = item.Reason is { } reason ? DisplayText.Reason(reason) : DisplayText.Verdict(item.Verdict);
        picture.Words(Picture.Right, y, verdict, anchor: "end");
        picture.Words(Picture.Margin, y, item.Name ?? item.ListedAs, bold: true,
            fit: Picture.Inner - TextMetrics.Width(verdict, Picture.Normal) - 12);
        var (bar, floor, target) = (y + 8, item.FloorPrice ?? 0, item.TargetPrice ?? 0);
        foreach (var tick in scale.Ticks(5))
            picture.Line(scale.At(tick), bar, scale.At(tick), bar + BarHeight, Palette.Grid);
        picture.Box(Picture.Margin, bar, scale.At(floor) - Picture.Margin, BarHeight, Palette.Rose, Hatch.Rising, Palette.Text);
        picture.Box(scale.At(floor), bar, scale.At(target) - scale.At(floor), BarHeight, Palette.Straw, outline: Palette.Text);
        if (item.ListedPrice is { } listed)
            Mark(picture, scale.At(listed), bar + BarHeight / 2, item.Verdict);
        var figures = Figures(item);
        picture.Words(Picture.Margin, bar + BarHeight + 15, figures, Picture.Small, fit: Picture.Inner);
        if (item.Name is not null)
            picture.Words(Picture.Right, bar + BarHeight + 15, item.ListedAs, Picture.Small, Palette.Quiet, "end",
                fit: decimal.Max(30, Picture.Inner - TextMetrics.Width(figures, Picture.Small) - 12));
    }

    /// <summary>A cross below the floor, a ring below the target, a full disc that meets it: on a white ground, to be visible over the bar.</summary>
    private static void Mark(Picture picture, decimal x, decimal y, Verdict? verdict)
    {
        if (verdict is Verdict.MeetsTarget)
            picture.Disc(x, y, 7, Palette.Paper, Palette.Text);
        else
            picture.Disc(x, y, 7, Palette.Text, Palette.Paper);
        if (verdict is null or Verdict.BelowFloor)
            picture.Path($"M{Svg.Number(x - 4)} {Svg.Number(y - 4)}l8 8m0-8l-8 8", Palette.Floor, thick: 2.5m);
    }

    private static void Key(Picture picture)
    {
        picture.Box(Picture.Margin, 86, 30, BarHeight, Palette.Rose, Hatch.Rising, Palette.Text);
        picture.Words(Picture.Margin + 38, 98, "up to the floor", Picture.Small);
        picture.Box(Picture.Margin + 160, 86, 30, BarHeight, Palette.Straw, outline: Palette.Text);
        picture.Words(Picture.Margin + 198, 98, "up to the target", Picture.Small);
        foreach (var (index, verdict) in new[] { Verdict.BelowFloor, Verdict.BelowTarget, Verdict.MeetsTarget }.Index())
        {
            Mark(picture, Picture.Margin + 8 + index * 150, 117, verdict);
            picture.Words(Picture.Margin + 22 + index * 150, 121.5m, DisplayText.Verdict(verdict), Picture.Small);
        }
    }

    private static string Figures(PriceListItemAnswer item) =>
        string.Join("  ·  ", new[] { ("floor", item.FloorPrice), ("target", item.TargetPrice), ("listed", item.ListedPrice) }
            .Where(figure => figure.Item2 is not null).Select(figure => $"{figure.Item1} {DisplayText.Money(figure.Item2!.Value, item.Currency)}"));

    private static string Sentence(PriceListItemAnswer item) =>
        $"{DisplayText.Named(item.Name, item.ListedAs)}: {(item.Reason is { } reason ? DisplayText.Reason(reason) : FiguresAndVerdict(item))}.";

    private static string FiguresAndVerdict(PriceListItemAnswer item) =>
        $"{Figures(item).Replace("  ·  ", ", ", StringComparison.Ordinal)}, {DisplayText.Verdict(item.Verdict)}";

    private static string Description(PriceListAnswer list, string channel, string currency) =>
        $"{channel}, {currency}, {DisplayText.Number(list.Items.Count)} designs. {string.Join(' ', list.Items.Select(Sentence))}";
}
