using System.Globalization;
using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// The smallest change of each kind that alone lets a price carry its part of the year. Nothing here offers time that safety depends
/// on, and long weeks are flagged, not advised.
/// </summary>
public sealed class Remedies
{
    internal const int MinuteDecimals = 2;
    private const int ShareDecimals = 6;
    private const decimal LongWeekHours = 48;
    private const decimal HoursInADay = 24;

    private readonly UnitCost _piece;
    private readonly StudioYear _year;
    private readonly Currency _money;
    private readonly bool _carries;

    private Remedies(PriceCheck check)
    {
        Figures = new RemedyFigures(check);
        (_piece, _year, _money, _carries) = (Figures.UnitCost, Figures.Year, Figures.Year.Currency, check.CarriesItsShare);
        All = Figures.CanBeHelped
            ? [Price(), Faster(), Spend(), Materials(), Yield(), Taxable(), Net(), Minutes(), Budget(), Hours()]
            : [Price(), .. Enum.GetValues<RemedyKind>().Except([RemedyKind.RaiseThePrice]).Select(NothingReachesTheStudio)];
        Balanced = Figures.CanBeHelped
            ? BalancedRemedy.Of(Figures, [.. new[] { RemedyKind.WorkFaster, RemedyKind.CheaperMaterials, RemedyKind.SpendLess }
                .Where(kind => All.Any(remedy => remedy.Kind == kind && remedy.Possible))])
            : null;
    }

    /// <summary>What the ways are computed from.</summary>
    public RemedyFigures Figures { get; }

    /// <summary>Every way in the model's order.</summary>
    public IReadOnlyList<Remedy> All { get; }

    /// <summary>Null where none of its three ways is possible.</summary>
    public BalancedRemedy? Balanced { get; }

    public static Outcome<Remedies> Of(PriceCheck check) => Outcome<Remedies>.Guard(() => new Remedies(check));

    private decimal MinutesNow => Rounding.Nearest(_piece.BenchHours * 60, MinuteDecimals);

    private Remedy Price()
    {
        var now = Rounding.WithDecimals(Figures.Check.Sale.Price, _money.Decimals);
        var enough = Rounding.WithDecimals(Figures.Check.Prices.FloorPrice, _money.Decimals);
        return _carries
            ? Unchanged(RemedyKind.RaiseThePrice, now)
            : Possible(RemedyKind.RaiseThePrice, now, enough, $"a price of {Money(enough)} instead of {Money(now)}");
    }

    private static Remedy NothingReachesTheStudio(RemedyKind kind) =>
        Not(kind, null, RemedyReasons.NothingReachesTheStudio,
            "Selling at this price costs more than it brings, before a minute of work is paid; only another price or channel can help.");

    private Remedy Faster()
    {
        if (_carries)
            return Unchanged(RemedyKind.WorkFaster, MinutesNow);
        if (Figures.EnoughHours is not { } hours)
            return Not(RemedyKind.WorkFaster, MinutesNow, RemedyReasons.PriceBelowMaterials,
                "The price does not even pay for the materials, so no saving of time can help.");
        var enough = Rounding.Down(hours * 60, MinuteDecimals);
        return Rounding.Settle(Figures.FixedHours) >= Rounding.Settle(hours)
            ? Not(RemedyKind.WorkFaster, MinutesNow, RemedyReasons.FixedTime,
                "The time that must not be hurried alone takes more than this price pays for.")
            : Possible(RemedyKind.WorkFaster, MinutesNow, enough, $"{Plain(enough)} bench minutes a piece instead of {Plain(MinutesNow)}");
    }

    private Remedy Spend()
    {
        var before = _money.RoundUp(_year.Pool);
        if (_carries)
            return Unchanged(RemedyKind.SpendLess, before) with { Cut = _money.RoundUp(0) };
        if (!Figures.Room.Reaches(0))
            return Not(RemedyKind.SpendLess, before, RemedyReasons.PriceBelowMaterials,
                "The price does not even pay for the materials, so no saving of costs can help.");
        var cut = _money.RoundUp(Figures.Cut);
        return !_year.Allocated.Reaches(Figures.Cut)
            ? Not(RemedyKind.SpendLess, before, RemedyReasons.MoreThanIsSpent,
                "Even with no costs at all the household's need alone is too much for this price.")
            : Possible(RemedyKind.SpendLess, before, before - cut, $"a year's costs lower by {Money(cut)}") with { Cut = cut };
    }

    private Remedy Materials()
    {
        var before = _money.Round(_piece.Materials);
        if (Rounding.Settle(_piece.Materials) <= 0)
            return Not(RemedyKind.CheaperMaterials, before, RemedyReasons.NoMaterials, "The design lists no materials to save on.");
        if (!Figures.EnoughMaterials.Reaches(0))
            return Not(RemedyKind.CheaperMaterials, before, RemedyReasons.MoreThanMaterials,
                "Even without any materials the bench time alone is too much for this price.");
        var enough = _money.RoundDown(Figures.EnoughMaterials);
        return _carries
            ? Unchanged(RemedyKind.CheaperMaterials, before)
            : Possible(RemedyKind.CheaperMaterials, before, enough, $"materials of {Money(enough)} a piece instead of {Money(before)}");
    }

    private Remedy Yield()
    {
        var worst = Figures.WorstShare;
        if (worst == 1)
            return Not(RemedyKind.LoseFewer, 1, RemedyReasons.NothingIsLost, "No pieces are lost as it is.");
        if (_piece.SecondsPayMoreThanTheyCost)
            return Not(RemedyKind.LoseFewer, worst, RemedyReasons.SecondsPayMoreThanTheyCost,
                "A second brings more than a rejected start costs, so better yield would raise the floor.");
        if (Figures.BetterYield is not { } better)
            return Unchanged(RemedyKind.LoseFewer, worst);
        if (better.GoodShare is not { } share)
            return Not(RemedyKind.LoseFewer, worst, RemedyReasons.NotEnough, "Even without any loss the piece costs more than this price brings.");
        var enough = decimal.Min(1, Rounding.Up(share, ShareDecimals));
        return Possible(RemedyKind.LoseFewer, worst, enough, $"a good share of {Plain(enough)} instead of {Plain(worst)}{InItsStep()}");
    }

    private string InItsStep() => Figures.WorstStep is not { } step ? ""
        : _piece.Design.Making.Steps![step].Name is { Length: > 0 } name ? $" in the step \"{name}\""
        : string.Create(CultureInfo.InvariantCulture, $" in step {step + 1}");

    private Remedy Taxable()
    {
        var more = _money.RoundUp(Figures.Cut);
        if (_carries)
            return Unchanged(RemedyKind.EarnTaxableElsewhere, more);
        return !Figures.Room.Reaches(0)
            ? Not(RemedyKind.EarnTaxableElsewhere, _money.RoundUp(0), RemedyReasons.PriceBelowMaterials,
                "The price does not even pay for the materials, so no other income makes the sale worth it.")
            : Possible(RemedyKind.EarnTaxableElsewhere, _money.RoundUp(0), more,
                $"{Money(more)} a year of further taxable income that takes no bench days");
    }

    private Remedy Net()
    {
        var before = _money.RoundUp(0);
        if (_carries)
            return Unchanged(RemedyKind.EarnNetElsewhere, before);
        if (!Figures.Room.Reaches(0))
            return Not(RemedyKind.EarnNetElsewhere, before, RemedyReasons.PriceBelowMaterials,
                "The price does not even pay for the materials, so no other income makes the sale worth it.");
        if (!_year.Profit.Reaches(Figures.Cut))
            return Not(RemedyKind.EarnNetElsewhere, before, RemedyReasons.CostsRemain,
                "Even if the household needed nothing from the studio, its costs alone are too much for this price.");
        if (_year.Profile.Pay is not null && !Figures.LeftAfterTax.Reaches(_year.PayAYear + _year.NotDeductible) && Figures.Cut > 0)
            return Not(RemedyKind.EarnNetElsewhere, before, RemedyReasons.PayDecides,
                "The least pay that is asked for must be earned whatever else comes in; lower it, or choose another way.");
        var more = _money.RoundUp(Figures.MoreNetIncome);
        return Possible(RemedyKind.EarnNetElsewhere, before, more,
            $"{Money(more)} a year of further income that is already taxed and takes no bench days");
    }

    private Remedy Minutes()
    {
        if (Figures.EnoughHours is not { } hours)
            return _year.Pool == 0 && Figures.Room.Reaches(0)
                ? Not(RemedyKind.NewDesignMinutes, MinutesNow, RemedyReasons.BenchMustEarnNothing,
                    "Bench time has nothing to recover, so any time is paid for.")
                : Not(RemedyKind.NewDesignMinutes, MinutesNow, RemedyReasons.PriceBelowMaterials, "The price does not even pay for these materials.");
        var minutes = Rounding.Down(hours * 60, MinuteDecimals);
        return Possible(RemedyKind.NewDesignMinutes, MinutesNow, minutes,
            $"a design for this price may take {Plain(minutes)} bench minutes with these materials");
    }

    private Remedy Budget()
    {
        var (before, budget) = (_money.Round(_piece.Materials), _money.RoundDown(Figures.NewMaterials));
        return !Figures.HasRoom
            ? Not(RemedyKind.NewDesignMaterials, before, RemedyReasons.PriceBelowMaterials, "The price does not even pay for these materials.")
            : !Figures.NewMaterials.Reaches(0)
            ? Not(RemedyKind.NewDesignMaterials, before, RemedyReasons.TimeTakesItAll, "At these minutes nothing of the price is left for materials.")
            : Possible(RemedyKind.NewDesignMaterials, before, budget,
                $"a design for this price may use {Money(budget)} of materials with these minutes");
    }

    private Remedy Hours()
    {
        var calendar = _year.Profile.Calendar;
        var before = Rounding.Nearest(calendar.HoursPerDay * calendar.DaysPerWeek, MinuteDecimals);
        if (_carries)
            return Unchanged(RemedyKind.MoreHours, before);
        if (!Figures.HasRoom)
            return Not(RemedyKind.MoreHours, before, RemedyReasons.PriceBelowMaterials,
                "The price does not even pay for the materials, so no number of hours can help.");
        if (Figures.WeekHours is not { } hours)
            return Not(RemedyKind.MoreHours, before, RemedyReasons.NoBenchShare,
                "None of the working day is spent at the bench, so a longer one makes no more pieces.");
        var week = Rounding.Up(hours, MinuteDecimals);
        if (week > HoursInADay * calendar.DaysPerWeek)
            return Not(RemedyKind.MoreHours, before, RemedyReasons.LongerThanADay,
                $"It would take {Plain(week)} hours a week, more than the working days have.");
        if (!Figures.PayAllows(week / calendar.DaysPerWeek))
            return Not(RemedyKind.MoreHours, before, RemedyReasons.PayDecides,
                "Each further hour must earn its own pay, so longer weeks cannot close the gap; lower the pay per hour, or choose another way.");
        return week > LongWeekHours
            ? Possible(RemedyKind.MoreHours, before, week,
                $"It would take {Plain(week)} hours a week: more than 48 are no answer, choose another way.") with
            {
                Flag = RemedyReasons.LongWeek,
            }
            : Possible(RemedyKind.MoreHours, before, week, $"{Plain(week)} working hours a week instead of {Plain(before)}, with the same weeks");
    }

    private static Remedy Possible(RemedyKind kind, decimal before, decimal after, string inWords) => new(kind, before, after, inWords, null);

    private static Remedy Unchanged(RemedyKind kind, decimal now) =>
        new(kind, now, now, "Nothing needs to change: the price carries its part of the year.", null);

    private static Remedy Not(RemedyKind kind, decimal? before, Code reason, string inWords) => new(kind, before, null, inWords, reason);

    /// <summary>Money keeps its decimals.</summary>
    private static string Money(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>Minutes, shares and hours as one would say them: 40, not 40.00.</summary>
    private static string Plain(decimal value) => Rounding.Trim(value).ToString(CultureInfo.InvariantCulture);
}
