using System.Globalization;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Planning.ByMonth;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    /// <summary>
    /// After the workings of the year: the plan's lines, what they were to leave by the day, what was sold, and what the rest must bring.
    /// </summary>
    public static IEnumerable<Working> Of(PlanProgress progress)
    {
        var year = progress.Year.FormulasOf<WrittenFigure>();
        var formulas = progress.FormulasOf(year);
        return
        [
            .. Of(progress.Year.Totals), .. OfSold(progress.Year, year.Sold), Line(year.Making.Available, "bench hours of the year for the plan"),
            .. Months(year.Making.Capacity, "bench hours that there are"), .. OfDays(formulas), .. OfBrought(progress, formulas),
            .. OfPace(formulas.Pace), .. OfRest(progress, formulas),
        ];
    }

    private static IEnumerable<Working> OfDays(PlanProgressFormulas<WrittenFigure> formulas) =>
    [
        .. Months(formulas.Gone, "the share of its days that has passed"), .. Months(formulas.Left, "the share that is left"),
        .. Months(formulas.Weeks, "working weeks"), Line(formulas.Pace.Due, "what the sales through the day were to leave"),
    ];

    private static IEnumerable<Working> OfBrought(PlanProgress progress, PlanProgressFormulas<WrittenFigure> formulas) =>
    [
        .. progress.Sold.Zip(formulas.Sold).SelectMany(sold => OfSold(sold.First, sold.Second)),
        Line(formulas.Pace.Brought, "what the sales have left"),
    ];

    private static IEnumerable<Working> OfSold(SoldSoFar sold, SoldSoFarFormulas<WrittenFigure> formulas)
    {
        var what = string.Create(CultureInfo.InvariantCulture, $"{Rounding.Trim(sold.Pieces)} of {sold.Sku} on {sold.Channel}");
        yield return Line(formulas.Net, $"{what}: what reached the studio");
        yield return Line(formulas.Materials, $"{what}: materials of a piece; the workings of its floor say how, here with 12 decimals");
        yield return Line(formulas.SecondsCredit, $"{what}: what seconds bring for a piece, likewise");
        yield return Line(formulas.Left, $"{what}: what they have left");
    }

    private static IEnumerable<Working> OfPace(PaceFormulas<WrittenFigure> pace)
    {
        yield return Line(pace.Ahead, "what has come less what was due");
        yield return Line(pace.RestPlanned, "what the rest of the plan is to leave");
        if (pace.HasRatio)
        {
            yield return Line(pace.Ratio, "what has come for each that was due");
            yield return Line(pace.Forecast, "what the year will have brought at this pace");
        }

        yield return Line(pace.StillToBring, "what must still come");
        if (pace.HasRest)
            yield return Line(pace.Factor, "what the rest of the plan must be multiplied by");
        yield return Line(pace.WeeksLeft, "working weeks that are left");
        if (pace.HasWeeks)
            yield return Line(pace.PerWeekLeft, "what each of them must bring");
    }

    private static IEnumerable<Working> OfRest(PlanProgress progress, PlanProgressFormulas<WrittenFigure> formulas)
    {
        yield return Line(formulas.StockExpected, "what finished pieces are expected to leave");
        yield return Line(formulas.HoursLeft, "bench hours that are left");
        if (formulas.HasHours)
            yield return Line(formulas.PerBenchHourLeft, "what each of them must bring");
        foreach (var number in formulas.Pace.HasRest ? progress.Months.Select(month => month.Month.Number) : [])
        {
            yield return Line(formulas.ToBring(number - 1), At(number, "what it must bring"));
            if (formulas.HasWeeks(number - 1))
                yield return Line(formulas.PerWeek(number - 1), At(number, "the same for each of its weeks that are left"));
        }

        yield return Line(formulas.Missing, "what the rest of the plan, as it is, will not bring");
        if (formulas.Pace.HasRest)
            yield return Line(formulas.SellMore, "the rest of the plan times this brings it");
    }
}
