using PriceFloor.Api.Http;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.Sureness;

/// <summary>
/// The guessed numbers by swing: what each does to the floor (without a design to the plan's surplus, else to an hour) at its low and at its high
/// end, all others likely; the one that matters most first.
/// </summary>
public static class SurenessPicture
{
    private const decimal BarHeight = 18, RowHeight = 52;

    public static byte[] Of(SurenessAnswer answer)
    {
        var picture = new Picture("How sure: which guess matters most", Description(answer));
        picture.Words(Picture.Margin, 52, Subject(answer), fit: Picture.Inner);
        picture.Words(Picture.Margin, 70, "A tenth, half and nine tenths of the draws are no higher", Picture.Small, Palette.Quiet,
            fit: Picture.Inner);
        picture.Words(Picture.Margin, 92, "Each number at its low and at its high end, all others likely", Picture.Small, Palette.Quiet,
            fit: Picture.Inner);
        picture.Box(Picture.Margin, 104, 16, 16, Palette.Mint, Hatch.Falling, Palette.Text);
        picture.Words(Picture.Margin + 24, 117, "at low", Picture.Small);
        picture.Box(Picture.Margin + 100, 104, 16, 16, Palette.Amber, Hatch.Rising, Palette.Text);
        picture.Words(Picture.Margin + 124, 117, "at high", Picture.Small);
        var scale = ScaleOf(answer);
        var y = 150m;
        foreach (var number in answer.Numbers)
        {
            picture.Group(Sentence(number, answer.Currency), () => Row(picture, number, answer.Currency, scale, y));
            y += RowHeight;
        }

        picture.Words(Picture.Margin, y, "What follows from the guesses, not what will happen.", Picture.Small, Palette.Quiet, fit: Picture.Inner);
        return picture.Render(y + Picture.Margin);
    }

    /// <summary>Room for both ends of every bar; the words stand above it.</summary>
    private static Scale ScaleOf(SurenessAnswer answer)
    {
        var swings = answer.Numbers.SelectMany(number => EffectOf(number).Swing).OfType<decimal>().Append(0).ToList();
        return new Scale(swings.Min(), swings.Max() == swings.Min() ? swings.Min() + 1 : swings.Max(), Picture.Margin, Picture.Right);
    }

    private static void Row(Picture picture, SurenessNumberAnswer number, string currency, Scale scale, decimal y)
    {
        var (effect, right) = (EffectOf(number), Right(number, currency));
        picture.Words(Picture.Right, y, right, Picture.Small, anchor: "end");
        picture.Words(Picture.Margin, y, NameOf(number), Picture.Small, bold: true,
            fit: Picture.Inner - TextMetrics.Width(right, Picture.Small) - 12);
        Bar(picture, effect.Swing[0], scale, y + 8, Palette.Mint, Hatch.Falling);
        Bar(picture, effect.Swing[1], scale, y + 8 + BarHeight / 2, Palette.Amber, Hatch.Rising);
        picture.Line(scale.At(0), y + 5, scale.At(0), y + 11 + BarHeight, Palette.Quiet, thick: 2);
    }

    private static void Bar(Picture picture, decimal? swing, Scale scale, decimal y, Palette fill, Hatch hatch)
    {
        if (swing is { } moved)
            picture.Box(scale.At(decimal.Min(0, moved)), y, scale.At(decimal.Max(0, moved)) - scale.At(decimal.Min(0, moved)), BarHeight / 2, fill,
                hatch, Palette.Text);
    }

    /// <summary>Both swings, and the share of what varies.</summary>
    private static string Right(SurenessNumberAnswer number, string currency)
    {
        var effect = EffectOf(number);
        var share = effect.Share is { } part ? $", {DisplayText.Number(Rounding.Trim(part * 100))} %" : "";
        return $"{Swing(effect.Swing[0], currency)} to {Swing(effect.Swing[1], currency)}{share}";
    }

    private static string Swing(decimal? swing, string currency) =>
        swing is { } moved ? (moved > 0 ? "+" : "") + DisplayText.Money(moved, currency) : "no answer";

    private static NumberEffectAnswer EffectOf(SurenessNumberAnswer number) => number.Floor ?? number.Plan ?? number.PerBenchHour!;

    /// <summary>The last two parts of its place, which is what people call it: "torch hands on minutes".</summary>
    private static string NameOf(SurenessNumberAnswer number)
    {
        var (document, place) = number.Name.Split('#', 2) is [var of, var at] ? (of, at) : ("", number.Name);
        var parts = place.Split('/', StringSplitOptions.RemoveEmptyEntries).Where(part => part != "*").ToList();
        var owner = document.StartsWith("profile:", StringComparison.Ordinal) || document.Length == 0 ? ""
            : document[(document.IndexOf(':', StringComparison.Ordinal) + 1)..] + " ";
        if (parts.Count > 0)
            parts[^1] = KebabWords.Spoken(parts[^1]);
        return owner + string.Join(' ', parts.TakeLast(2));
    }

    private static string Subject(SurenessAnswer answer) => answer.Numbers[0].Floor is not null
        ? $"The floor: {Spread(answer.Floor!, answer.Currency)}"
        : answer.Numbers[0].Plan is not null
            ? $"The plan's surplus: {Spread(answer.Plan!.SurplusBeforeTax, answer.Currency)}"
            : $"An hour must bring {Spread(answer.PerBenchHour, answer.Currency)}";

    private static string Spread(SpreadAnswer spread, string currency) => $"{DisplayText.Money(spread.Tenth, currency)}, "
        + $"{DisplayText.Money(spread.Middle, currency)}, {DisplayText.Money(spread.NineTenths, currency)} {currency}";

    private static string Sentence(SurenessNumberAnswer number, string currency) => $"{NameOf(number)}: {Right(number, currency)}.";

    private static string Description(SurenessAnswer answer) =>
        $"{Subject(answer)}. What each guessed number does at its low and at its high end: "
        + string.Join(' ', answer.Numbers.Select(number => Sentence(number, answer.Currency)));
}
