using System.Globalization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.Plans;

/// <summary>
/// A planned year in two rows of bars: the cash that is free when each month ends, with the reserve, and the hours that each month works, against
/// those that it has.
/// </summary>
public static class PlanPicture
{
    private const int Ticks = 4;

    private const decimal CashTop = 108, CashBottom = 280, HoursTop = 350, HoursBottom = 470;

    /// <param name="answer">The months.</param>
    /// <param name="asked">The plan.</param>
    public static byte[] Of(PlanMonthsAnswer answer, PlanInQuestion asked)
    {
        var reserve = asked.Months.Plan.Reserve;
        var picture = new Picture("The year month by month", Description(answer, reserve));
        picture.Words(Picture.Margin, 52, $"{asked.Plan.Key}, from {Named(answer.Months[0])}", fit: Picture.Inner);
        picture.Words(Picture.Margin, 70, $"{answer.Currency}", Picture.Small, Palette.Quiet, fit: Picture.Inner);
        var (free, hours) = (FreeScale(answer, reserve), HourScale(answer));
        var left = decimal.Max(WidthOf(free), WidthOf(hours)); // so that a month is in one column of both
        Cash(picture, answer, reserve, (free, left));
        Hours(picture, answer, asked.Months, (hours, left));
        return picture.Render(Key(picture, answer, reserve));
    }

    private static Scale FreeScale(PlanMonthsAnswer answer, decimal reserve)
    {
        var free = answer.Months.Select(month => month.Free).ToList();
        var (least, most) = (decimal.Min(0, free.Min()), decimal.Max(decimal.Max(1, reserve), free.Max()));
        return new Scale(least * 1.05m, most * 1.05m, CashBottom, CashTop);
    }

    private static Scale HourScale(PlanMonthsAnswer answer)
    {
        var most = answer.Months.Max(month => decimal.Max(month.MadeHours, month.Capacity));
        return new Scale(0, decimal.Max(1, most) * 1.05m, HoursBottom, HoursTop);
    }

    private static void Cash(Picture picture, PlanMonthsAnswer answer, decimal reserve, (Scale Up, decimal Left) axis)
    {
        var (up, left) = axis;
        Axis(picture, axis, "free cash when the month ends", CashTop);
        foreach (var (i, month) in answer.Months.Index())
        {
            var (x, width) = Column(i, left);
            var (top, bottom) = (up.At(decimal.Max(0, month.Free)), up.At(decimal.Min(0, month.Free)));
            picture.Group($"{Named(month)}: {DisplayText.Money(month.Free, answer.Currency)} free", () =>
                picture.Box(x, top, width, decimal.Max(1, bottom - top), month.Free < 0 ? Palette.Rose : Palette.Mint,
                    month.Free < 0 ? Hatch.Falling : Hatch.None, Palette.Quiet));
            picture.Words(x + width / 2, CashBottom + 17, Short(month), Picture.Small, Palette.Quiet, "middle");
        }

        picture.Line(left, up.At(0), Picture.Right, up.At(0), Palette.Text);
        if (reserve > 0)
            picture.Line(left, up.At(reserve), Picture.Right, up.At(reserve), Palette.Target, Dash.Dashed, 2);
    }

    private static void Hours(Picture picture, PlanMonthsAnswer answer, YearByMonth year, (Scale Up, decimal Left) axis)
    {
        var (up, left) = axis;
        Axis(picture, axis, "bench hours", HoursTop);
        foreach (var (i, month) in answer.Months.Index())
        {
            var (x, width) = Column(i, left);
            var ahead = Answers.Hours(year.Months[i].MadeHours - year.Months[i].HoursToMake); // pieces that lay ready need no making
            picture.Group($"{Named(month)}: {DisplayText.Number(month.MadeHours)} hours made of {DisplayText.Number(month.Capacity)}", () =>
            {
                picture.Box(x, up.At(month.MadeHours), width, HoursBottom - up.At(month.MadeHours), Palette.Sky, outline: Palette.Quiet);
                if (ahead > 0)
                    picture.Box(x, up.At(month.MadeHours), width, up.At(month.MadeHours - ahead) - up.At(month.MadeHours), hatch: Hatch.Rising);
            });
            picture.Line(x - 1, up.At(month.Capacity), x + width + 1, up.At(month.Capacity), Palette.Floor, thick: 3);
            picture.Words(x + width / 2, HoursBottom + 17, Short(month), Picture.Small, Palette.Quiet, "middle");
        }

        picture.Line(left, HoursBottom, Picture.Right, HoursBottom, Palette.Text);
    }

    private static decimal WidthOf(Scale up) =>
        Picture.Margin + up.Ticks(Ticks).Max(tick => TextMetrics.Width(DisplayText.Number(tick), Picture.Small)) + 8;

    private static void Axis(Picture picture, (Scale Up, decimal Left) axis, string words, decimal top)
    {
        var (up, left) = axis;
        picture.Words(Picture.Margin, top - 12, words, Picture.Small, Palette.Quiet);
        foreach (var tick in up.Ticks(Ticks))
        {
            picture.Line(left, up.At(tick), Picture.Right, up.At(tick), Palette.Grid);
            picture.Words(left - 8, up.At(tick) + 4.5m, DisplayText.Number(tick), Picture.Small, Palette.Quiet, "end");
        }
    }

    private static (decimal X, decimal Width) Column(int month, decimal left)
    {
        var each = (Picture.Right - left) / 12;
        return (left + month * each + 3, each - 6);
    }

    /// <summary>The meaning of each mark, with its figure.</summary>
    private static decimal Key(Picture picture, PlanMonthsAnswer answer, decimal reserve)
    {
        var y = HoursBottom + 46;
        void Row(string words, Action<decimal> mark)
        {
            mark(y - 5);
            picture.Words(Picture.Margin + 34, y, words, fit: Picture.Inner - 34);
            y += 23;
        }

        Row(Lowest(answer), at => picture.Box(Picture.Margin + 4, at - 8, 16, 16, Palette.Rose, Hatch.Falling, Palette.Quiet));
        if (reserve > 0)
            Row($"reserve {DisplayText.Money(reserve, answer.Currency)}",
                at => picture.Line(Picture.Margin, at, Picture.Margin + 24, at, Palette.Target, Dash.Dashed, 2));
        Row("hours that there are", at => picture.Line(Picture.Margin, at, Picture.Margin + 24, at, Palette.Floor, thick: 3));
        Row(answer.BuildFrom is { } from ? $"made ahead, from {Named(answer.Months[(int)from - 1])} on" : "nothing is made ahead",
            at => picture.Box(Picture.Margin + 4, at - 8, 16, 16, Palette.Sky, Hatch.Rising, Palette.Quiet));
        return y - 6;
    }

    private static string Lowest(PlanMonthsAnswer answer) =>
        $"least free: {DisplayText.Money(answer.LowestFree.Amount, answer.Currency)} in {Named(answer.Months[(int)answer.LowestFree.Month - 1])}";

    private static string Named(PlanMonthAnswer month) => month.From.ToString("MMMM yyyy", CultureInfo.InvariantCulture);

    private static string Short(PlanMonthAnswer month) => month.From.ToString("MMM", CultureInfo.InvariantCulture)[..1];

    private static string Description(PlanMonthsAnswer answer, decimal reserve) => string.Join(' ', answer.Months.Select(month =>
        $"{Named(month)}: {DisplayText.Money(month.Free, answer.Currency)} free, {DisplayText.Number(month.MadeHours)} of "
        + $"{DisplayText.Number(month.Capacity)} hours.").Prepend(
            $"Free cash at the end of each month in {answer.Currency}, {Lowest(answer)}, reserve {DisplayText.Money(reserve, answer.Currency)}."));
}
