using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>The formulas of <see cref="RemedyFigures"/>.</summary>
internal sealed class RemedyFormulas<T> where T : IFigure<T>
{
    public RemedyFormulas(PriceCheck check)
    {
        var piece = check.Prices.Floor.UnitCost;
        var (year, calendar) = (piece.Year, piece.Year.Profile.Calendar);
        T net = T.Named("net", check.Sale.Net), benchCost = T.Named("benchCost", piece.BenchCost),
            benchHours = T.Named("benchHours", piece.BenchHours);
        T materials = T.Named("materials", piece.Materials), seconds = T.Named("secondsCredit", piece.SecondsCredit);
        var pool = T.Named("benchMustEarn", year.Pool);
        Room = T.Named("room", CheckFormulas<T>.LeftOf(net, materials, seconds));
        // A price at or above its floor needs no change at all.
        Gap = T.Named("gap", check.CarriesItsShare ? 0 : T.Max(0, benchCost + materials - seconds - net));
        Cut = T.Named("cut", check.CarriesItsShare ? 0 : T.Max(0, pool - Room * T.Named("benchHoursOfTheYear", year.BenchHours) / benchHours));
        EnoughForBench = T.Named("enoughForBench", pool - Cut);
        MoreTaxableIncome = T.Named("moreTaxableIncome", Cut);
        EnoughMaterials = T.Named("enoughMaterials", materials - Gap);
        NewMaterials = T.Named("newMaterials", net + seconds - benchCost);

        HasRoom = Rounding.Settle(Room.Value) > 0;
        PaysForSomeTime = HasRoom && year.Pool > 0;
        EnoughHours = PaysForSomeTime ? T.Named("enoughHours", Room / T.Named("perBenchHour", year.PerBenchHour)) : 0;
        EnoughMinutes = T.Named("enoughMinutes", EnoughHours * 60);
        MoreHoursHelp = HasRoom && calendar.BenchShare > 0 && !check.CarriesItsShare;
        WeekHours = MoreHoursHelp ? T.Named("weekHours", WeekOf(pool * benchHours / Room, year)) : 0;

        ProfitLeft = T.Named("profitLeft", T.Max(0, T.Named("profitBeforeTax", year.Profit) - Cut));
        OnProfitLeft = new TaxFormulas<T>(year.TaxRules.Levies, ProfitLeft);
        LeftAfterTax = T.Named("leftAfterTax", ProfitLeft - T.Named("lowerTax", OnProfitLeft.Total));
        MoreNetIncome = T.Named("moreNetIncome", Cut.Value == 0 ? 0 : InsteadOfProfit(year));
    }

    public T Room { get; }

    public bool HasRoom { get; }

    public T Gap { get; }

    public T Cut { get; }

    public T EnoughForBench { get; }

    public T MoreTaxableIncome { get; }

    public T EnoughMaterials { get; }

    public T NewMaterials { get; }

    /// <summary>Whether the price pays for some bench time, but not for any.</summary>
    public bool PaysForSomeTime { get; }

    /// <summary>Means something only where the price pays for some bench time, but not for any.</summary>
    public T EnoughHours { get; }

    public T EnoughMinutes { get; }

    public bool MoreHoursHelp { get; }

    /// <summary>Means something only where more hours help.</summary>
    public T WeekHours { get; }

    public T ProfitLeft { get; }

    public TaxFormulas<T> OnProfitLeft { get; }

    public T LeftAfterTax { get; }

    public T MoreNetIncome { get; }

    /// <summary>A longer day makes proportionally more; helpers' hours stay.</summary>
    private static T WeekOf(T hours, StudioYear year)
    {
        var (calendar, helpers) = (year.Profile.Calendar, RemedyFigures.HelperHoursOf(year));
        return (helpers > 0 ? hours - helpers : hours) * calendar.DaysPerWeek / (T.Named("workdays", year.Workdays) * calendar.BenchShare);
    }

    /// <summary>Income beyond what the household needs closes nothing yet, unless a least pay is asked for whatever else comes in.</summary>
    private T InsteadOfProfit(StudioYear year)
    {
        var more = T.Named("need", year.Need) - LeftAfterTax;
        return year.Profile.Pay is not null ? more : more + T.Max(0, T.Named("netIncome", year.NetIncome) - T.Named("household", year.Household));
    }
}
