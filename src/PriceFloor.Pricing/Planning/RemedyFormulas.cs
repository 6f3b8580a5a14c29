using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>The formulas of <see cref="RemedyFigures"/>.</summary>
internal sealed class RemedyFormulas<T> where T : IFigure<T>
{
    public RemedyFormulas(UnitCost piece, RemedyBound bound)
    {
        var (year, calendar) = (piece.Year, piece.Year.Profile.Calendar);
        T amount = T.Named(bound.Symbol, bound.Amount), benchCost = T.Named("benchCost", piece.BenchCost);
        T materials = T.Named("materials", piece.Materials), seconds = T.Named("secondsCredit", piece.SecondsCredit);
        T mustEarn = T.Named("benchMustEarn", year.BenchMustEarn), perHour = T.Named("perBenchHour", year.PerBenchHour);
        T benchHours = T.Named("benchHours", piece.BenchHours), sellingHours = T.Named("sellingHours", bound.SellingHours);
        var sells = bound.SellingHours > 0;
        var hours = sells ? benchHours + sellingHours : benchHours;
        SellingCost = T.Named("sellingCost", sells ? perHour * sellingHours : 0);
        var timeCost = sells ? benchCost + SellingCost : benchCost;

        Room = T.Named("room", CheckFormulas<T>.LeftOf(amount, materials, seconds));
        // A price at or above its floor needs no change at all.
        Gap = T.Named("gap", bound.IsKept ? 0 : T.Max(0, timeCost + materials - seconds - amount));
        Cut = T.Named("cut", bound.IsKept ? 0 : T.Max(0, mustEarn - Room * T.Named("carryingHours", year.CarryingHours) / hours));
        EnoughForBench = T.Named("enoughForBench", mustEarn - Cut);
        EnoughMaterials = T.Named("enoughMaterials", materials - Gap);
        NewMaterials = T.Named("newMaterials", amount + seconds - timeCost);

        HasRoom = Rounding.Settle(Room.Value) > 0;
        PaysForSomeTime = HasRoom && year.BenchMustEarn > 0;
        EnoughHours = PaysForSomeTime ? T.Named("enoughHours", sells ? Room / perHour - sellingHours : Room / perHour) : 0;
        EnoughMinutes = T.Named("enoughMinutes", EnoughHours * 60);
        MoreHoursHelp = HasRoom && calendar.BenchShare + calendar.SellingShare > 0 && !bound.IsKept;
        WeekHours = MoreHoursHelp ? T.Named("weekHours", WeekOf(mustEarn * hours / Room, year)) : 0;
    }

    public T Room { get; }

    public bool HasRoom { get; }

    public T Gap { get; }

    public T Cut { get; }

    public T EnoughForBench { get; }

    public T EnoughMaterials { get; }

    public T NewMaterials { get; }

    /// <summary>What the hours of selling must recover; 0 if the channel takes none.</summary>
    public T SellingCost { get; }

    /// <summary>Whether the price pays for some time, but not for any.</summary>
    public bool PaysForSomeTime { get; }

    /// <summary>Valid only if the price pays for some time, but not for any; 0 or less if selling takes it all.</summary>
    public T EnoughHours { get; }

    public T EnoughMinutes { get; }

    public bool MoreHoursHelp { get; }

    /// <summary>Valid only if more hours help.</summary>
    public T WeekHours { get; }

    /// <summary>A longer day makes proportionally more; helpers' hours stay.</summary>
    private static T WeekOf(T hours, StudioYear year)
    {
        var (calendar, helpers) = (year.Profile.Calendar, RemedyFigures.HelperHoursOf(year));
        var worked = year.NormalUse == 1 ? hours : hours / year.NormalUse;
        T share = calendar.SellingShare == 0 ? calendar.BenchShare : (T)calendar.BenchShare + calendar.SellingShare;
        return (helpers > 0 ? worked - helpers : worked) * calendar.DaysPerWeek / (T.Named("workdays", year.Workdays) * share);
    }
}
