using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.BreakEvens;

/// <summary>
/// How many must sell: the money left from sales rises with each piece, until it reaches what the year must bring. The hatched part is beyond the
/// bench hours.
/// </summary>
public static class BreakEvenPicture
{
    private const decimal Top = 110, Bottom = 360;

    public static byte[] Of(BreakEvenAnswer answer, BreakEven found, decimal? planned, string design, string channel)
    {
        var mustEarn = Currency.Of(answer.Currency).RoundUp(found.BenchMustEarn);
        var picture = new Picture("How many must sell", Description(answer, mustEarn, planned, design, channel));
        picture.Words(Picture.Margin, 52, design, fit: Picture.Inner);
        picture.Words(Picture.Margin, 70, $"{DisplayText.Money(answer.Price, answer.Currency)} {answer.Currency} on {channel}", Picture.Small,
            Palette.Quiet, fit: Picture.Inner);

        var pieces = decimal.Max(1, new[] { answer.Units, answer.Capacity, planned ?? 0 }.Max() * 1.1m);
        var money = decimal.Max(mustEarn * 1.1m, pieces * found.Contribution);
        var ticks = new Scale(0, money, Bottom, Top).Ticks(5).ToList();
        var left = Picture.Margin + ticks.Max(tick => TextMetrics.Width(DisplayText.Number(tick), Picture.Small)) + 8;
        var (across, up) = (new Scale(0, pieces, left, Picture.Right), new Scale(0, money, Bottom, Top));

        Axes(picture, across, up, ticks, left);
        picture.Box(across.At(answer.Capacity), Top, Picture.Right - across.At(answer.Capacity), Bottom - Top, hatch: Hatch.Rising);
        picture.Line(across.At(answer.Capacity), Top - 6, across.At(answer.Capacity), Bottom, Palette.Quiet, Dash.Dashed, 2);
        picture.Line(left, up.At(mustEarn), Picture.Right, up.At(mustEarn), Palette.Floor, Dash.Dashed, 2);
        picture.Path($"M{Svg.Number(left)} {Svg.Number(Bottom)}L{Svg.Number(Picture.Right)} {Svg.Number(up.At(pieces * found.Contribution))}",
            Palette.Target, thick: 3);
        if (planned is { } plan)
            picture.Path(Diamond(across.At(plan), up.At(plan * found.Contribution)), Palette.Text, thick: 2.5m);
        picture.Line(across.At(answer.Units), up.At(mustEarn), across.At(answer.Units), Bottom, Palette.Text, Dash.Dotted, 2);
        picture.Disc(across.At(answer.Units), up.At(answer.Units * found.Contribution), 6, Palette.Text, Palette.Paper);
        return picture.Render(Key(picture, answer, mustEarn, planned));
    }

    private static void Axes(Picture picture, Scale across, Scale up, List<decimal> ticks, decimal left)
    {
        picture.Words(Picture.Margin, Top - 10, "left for the year", Picture.Small, Palette.Quiet);
        foreach (var tick in ticks)
        {
            picture.Line(left, up.At(tick), Picture.Right, up.At(tick), Palette.Grid);
            picture.Words(left - 8, up.At(tick) + 4.5m, DisplayText.Number(tick), Picture.Small, Palette.Quiet, "end");
        }

        var widest = TextMetrics.Width(DisplayText.Number(Rounding.Up(across.Most, 0)), Picture.Small) + 12;
        foreach (var tick in across.Ticks(int.Clamp((int)((Picture.Right - left) / widest), 1, 5)))
        {
            var half = TextMetrics.Width(DisplayText.Number(tick), Picture.Small) / 2;
            picture.Line(across.At(tick), Bottom, across.At(tick), Bottom + 5, Palette.Quiet);
            picture.Words(decimal.Min(across.At(tick), Picture.Width - 2 - half), Bottom + 19, DisplayText.Number(tick), Picture.Small,
                Palette.Quiet, "middle");
        }

        picture.Line(left, Bottom, Picture.Right, Bottom, Palette.Quiet);
        picture.Words(Picture.Right, Bottom + 36, "pieces sold in the year", Picture.Small, Palette.Quiet, "end");
    }

    /// <summary>The meaning of each line and mark, with its figure.</summary>
    private static decimal Key(Picture picture, BreakEvenAnswer answer, decimal mustEarn, decimal? planned)
    {
        var y = Bottom + 62;
        void Row(string words, Action<decimal> mark)
        {
            mark(y - 5);
            picture.Words(Picture.Margin + 34, y, words, fit: Picture.Inner - 34);
            y += 23;
        }

        string Money(decimal amount) => DisplayText.Money(amount, answer.Currency);
        Row($"{DisplayText.Number(answer.Units)} pieces carry the year", at => picture.Disc(Picture.Margin + 12, at, 6, Palette.Text, Palette.Paper));
        Row($"each leaves {Money(answer.Contribution)}", at => picture.Line(Picture.Margin, at, Picture.Margin + 24, at, Palette.Target, thick: 3));
        Row($"the year must bring {Money(mustEarn)}", at => picture.Line(Picture.Margin, at, Picture.Margin + 24, at, Palette.Floor, Dash.Dashed, 2));
        Row($"the bench hours make {DisplayText.Number(answer.Capacity)}{(answer.WithinCapacity ? "" : ": not enough")}", at =>
        {
            picture.Box(Picture.Margin + 8, at - 8, 16, 16, hatch: Hatch.Rising);
            picture.Line(Picture.Margin + 8, at - 8, Picture.Margin + 8, at + 8, Palette.Quiet, Dash.Dashed, 2);
        });
        if (planned is { } plan)
            Row($"{DisplayText.Number(plan)} are planned", at => picture.Path(Diamond(Picture.Margin + 12, at), Palette.Text, thick: 2.5m));
        return y - 6;
    }

    private static string Diamond(decimal x, decimal y) => $"M{Svg.Number(x)} {Svg.Number(y - 8)}l8 8l-8 8l-8-8z";

    private static string Description(BreakEvenAnswer answer, decimal mustEarn, decimal? planned, string design, string channel) =>
        $"{design} at {DisplayText.Money(answer.Price, answer.Currency)} {answer.Currency} on {channel}: each piece leaves "
        + $"{DisplayText.Money(answer.Contribution, answer.Currency)} of the {DisplayText.Money(mustEarn, answer.Currency)} "
        + $"that the year must bring, "
        + $"so {DisplayText.Number(answer.Units)} pieces carry it. "
        + $"The bench hours make {DisplayText.Number(answer.Capacity)}, "
        + $"which is {(answer.WithinCapacity ? "enough" : "not enough")}.{(planned is { } plan ? $" {DisplayText.Number(plan)} are planned." : "")}";
}
