using System.Globalization;

namespace PriceFloor.Pricing;

/// <summary>
/// The smallest change of each kind that alone lets a price carry its part of the year. Nothing here offers time that safety depends
/// on, and long weeks are flagged, not advised.
/// </summary>
public sealed class Remedies
{
    private const int MinuteDecimals = 2;
    private const int ShareDecimals = 6;
    private const decimal LongWeekHours = 48;

    private readonly PriceCheck _check;
    private readonly Piece _piece;
    private readonly StudioYear _year;
    private readonly Currency _money;
    private readonly decimal _net;
    private readonly decimal _room;
    private readonly decimal _cut;

    private Remedies(PriceCheck check)
    {
        _check = check;
        _piece = check.Prices.Floor.Piece;
        _year = _piece.Year;
        _money = _year.Currency;
        _net = check.Sale.Net;
        _room = _net - _piece.Materials + _piece.SecondsCredit;
        // A price at or above its floor needs no change at all.
        _cut = check.CarriesItsShare ? 0 : decimal.Max(0, _year.Pool - _room * _year.BenchHours / _piece.BenchHours);
        var reachesTheStudio = _net.Reaches(0);
        All = reachesTheStudio
            ? [Price(), Faster(), Spend(), Materials(), Yield(), Taxable(), Net(), Minutes(), Budget(), Hours()]
            : [Price(), .. Enum.GetValues<RemedyKind>().Except([RemedyKind.RaiseThePrice]).Select(NothingReachesTheStudio)];
        Balanced = reachesTheStudio ? Balance() : null;
    }

    /// <summary>Every way in the model's order.</summary>
    public IReadOnlyList<Remedy> All { get; }

    /// <summary>Null where none of its three ways is possible.</summary>
    public BalancedRemedy? Balanced { get; }

    public static Outcome<Remedies> Of(PriceCheck check) => Outcome<Remedies>.Guard(() => new Remedies(check));

    private decimal Gap => _check.CarriesItsShare ? 0 : _piece.BenchCost + _piece.Materials - _piece.SecondsCredit - _net;

    private decimal BenchMinutes => _piece.BenchHours * 60;

    private decimal FixedHours => _piece.Time.FixedHours / _piece.SoldShare;

    private bool HasRoom => _room.Reaches(0) && Rounding.Settle(_room) > 0;

    private Remedy Price() => _check.CarriesItsShare
        ? Unchanged(RemedyKind.RaiseThePrice, Rounding.WithDecimals(_check.Sale.Price, _money.Decimals))
        : Possible(RemedyKind.RaiseThePrice, Rounding.WithDecimals(_check.Sale.Price, _money.Decimals), Rounding.WithDecimals(_check.Prices.FloorPrice, _money.Decimals), "a price of {1} instead of {0}");

    // A floor is never below nothing, so a sale that costs money is mended by its price alone.
    private static Remedy NothingReachesTheStudio(RemedyKind kind) =>
        Not(kind, null, "nothing-reaches-the-studio", "Selling at this price costs more than it brings, before a minute of work is paid; only another price or channel can help.");

    private Remedy Faster()
    {
        if (_check.CarriesItsShare)
            return Unchanged(RemedyKind.WorkFaster, Rounding.Nearest(BenchMinutes, MinuteDecimals));
        if (!HasRoom)
            return Not(RemedyKind.WorkFaster, Rounding.Nearest(BenchMinutes, MinuteDecimals), "price-below-materials", "The price does not even pay for the materials, so no saving of time can help.");
        var enough = _room / _year.PerBenchHour;
        return Rounding.Settle(FixedHours) >= Rounding.Settle(enough)
            ? Not(RemedyKind.WorkFaster, Rounding.Nearest(BenchMinutes, MinuteDecimals), "fixed-time", "The time that must not be hurried alone takes more than this price pays for.")
            : Possible(RemedyKind.WorkFaster, Rounding.Nearest(BenchMinutes, MinuteDecimals), Rounding.Down(enough * 60, MinuteDecimals), "{1} bench minutes a piece instead of {0}");
    }

    private Remedy Spend()
    {
        var before = _money.Least(_year.Pool);
        if (!_room.Reaches(0))
            return Not(RemedyKind.SpendLess, before, "price-below-materials", "The price does not even pay for the materials, so no saving of costs can help.");
        return !_year.Allocated.Reaches(_cut)
            ? Not(RemedyKind.SpendLess, before, "more-than-is-spent", "Even with no costs at all the household's need alone is too much for this price.")
            : Possible(RemedyKind.SpendLess, before, before - _money.Least(_cut), "a year's costs lower by " + Text(_money.Least(_cut)));
    }

    private Remedy Materials()
    {
        var before = _money.Nearest(_piece.Materials);
        if (Rounding.Settle(_piece.Materials) <= 0)
            return Not(RemedyKind.CheaperMaterials, before, "no-materials", "The design lists no materials to save on.");
        var enough = _piece.Materials - Gap;
        return !enough.Reaches(0)
            ? Not(RemedyKind.CheaperMaterials, before, "more-than-materials", "Even without any materials the bench time alone is too much for this price.")
            : _check.CarriesItsShare ? Unchanged(RemedyKind.CheaperMaterials, before)
            : Possible(RemedyKind.CheaperMaterials, before, _money.Most(enough), "materials of {1} a piece instead of {0}");
    }

    private Remedy Yield()
    {
        var making = _piece.Design.Making;
        var worst = making.Steps is { } steps ? steps.Min(step => step.GoodShare) : making.GoodShare;
        if (worst == 1)
            return Not(RemedyKind.LoseFewer, 1, "nothing-is-lost", "No pieces are lost as it is.");
        if (_piece.SecondsPayMoreThanTheyCost)
            return Not(RemedyKind.LoseFewer, worst, "seconds-pay-more-than-they-cost", "A second brings more than a rejected start costs, so better yield would raise the floor.");
        if (_check.CarriesItsShare)
            return Unchanged(RemedyKind.LoseFewer, worst);

        // The cost is a straight line in the starts, 1 over the good share: two points give it.
        var (now, flawless) = (Cost(_piece), Cost(WithGoodShare(1)));
        var perStart = (now - flawless) / (1 / worst - 1);
        if (!_net.Reaches(flawless) || Rounding.Settle(perStart) <= 0)
            return Not(RemedyKind.LoseFewer, worst, "not-enough", "Even without any loss the piece costs more than this price brings.");
        var starts = 1 + (_net - flawless) / perStart;
        return Possible(RemedyKind.LoseFewer, worst, decimal.Min(1, Rounding.Up(1 / starts, ShareDecimals)), "a good share of {1} instead of {0}");
    }

    private Remedy Taxable() => !_room.Reaches(0)
        ? Not(RemedyKind.EarnTaxableElsewhere, 0, "price-below-materials", "The price does not even pay for the materials, so no other income makes the sale worth it.")
        : Possible(RemedyKind.EarnTaxableElsewhere, 0, _money.Least(_cut), "{1} a year of further taxable income that takes no bench days");

    private Remedy Net()
    {
        if (!_room.Reaches(0))
            return Not(RemedyKind.EarnNetElsewhere, 0, "price-below-materials", "The price does not even pay for the materials, so no other income makes the sale worth it.");
        if (!_year.Profit.Reaches(_cut))
            return Not(RemedyKind.EarnNetElsewhere, 0, "costs-remain", "Even if the household needed nothing from the studio, its costs alone are too much for this price.");
        var profit = decimal.Max(0, _year.Profit - _cut);
        var left = profit - _year.TaxRules.On(profit);
        if (_year.Profile.Pay is not null && !left.Reaches(_year.PayAYear + _year.NotDeductible) && _cut > 0)
            return Not(RemedyKind.EarnNetElsewhere, 0, "pay-decides", "The least pay that is asked for must be earned whatever else comes in; lower it, or choose another way.");
        var surplus = _year.Profile.Pay is null ? decimal.Max(0, _year.NetIncome - _year.Household)
            : decimal.Max(0, _year.Need - decimal.Max(0, _year.Household - _year.NetIncome));
        return Possible(RemedyKind.EarnNetElsewhere, 0, _cut == 0 ? _money.Least(0) : _money.Least(_year.Need - left + (_year.Profile.Pay is null ? surplus : 0)), "{1} a year of further income that is already taxed and takes no bench days");
    }

    private Remedy Minutes() => !HasRoom || _year.Pool == 0
        ? Not(RemedyKind.NewDesignMinutes, Rounding.Nearest(BenchMinutes, MinuteDecimals), _year.Pool == 0 ? "no-pool" : "price-below-materials", _year.Pool == 0 ? "Bench time has nothing to recover, so any time is paid for." : "The price does not even pay for these materials.")
        : Possible(RemedyKind.NewDesignMinutes, Rounding.Nearest(BenchMinutes, MinuteDecimals), Rounding.Down(_room / _year.PerBenchHour * 60, MinuteDecimals), "a design for this price may take {1} bench minutes with these materials");

    private Remedy Budget()
    {
        var budget = _net + _piece.SecondsCredit - _piece.BenchCost;
        return !HasRoom || !budget.Reaches(0)
            ? Not(RemedyKind.NewDesignMaterials, _money.Nearest(_piece.Materials), "time-takes-it-all", "At these minutes nothing of the price is left for materials.")
            : Possible(RemedyKind.NewDesignMaterials, _money.Nearest(_piece.Materials), _money.Most(budget), "a design for this price may use {1} of materials with these minutes");
    }

    private Remedy Hours()
    {
        var calendar = _year.Profile.Calendar;
        var before = Rounding.Nearest(calendar.HoursPerDay * calendar.DaysPerWeek, MinuteDecimals);
        if (_check.CarriesItsShare)
            return Unchanged(RemedyKind.MoreHours, before);
        if (!HasRoom || calendar.BenchShare == 0)
            return Not(RemedyKind.MoreHours, before, "price-below-materials", "The price does not even pay for the materials, so no number of hours can help.");
        var week = Rounding.Up(_year.Pool * _piece.BenchHours / _room * calendar.DaysPerWeek / (_year.Workdays * calendar.BenchShare), MinuteDecimals);
        return week > LongWeekHours
            ? new Remedy(RemedyKind.MoreHours, before, week, $"It would take {Text(week)} hours a week: more than 48 are no answer, choose another way.", null) { Flag = "long-week" }
            : Possible(RemedyKind.MoreHours, before, week, "{1} working hours a week instead of {0}, with the same weeks");
    }

    private BalancedRemedy? Balance()
    {
        var ways = new[] { RemedyKind.WorkFaster, RemedyKind.CheaperMaterials, RemedyKind.SpendLess }.Where(kind => All.Any(remedy => remedy.Kind == kind && remedy.Possible)).ToList();
        if (ways.Count == 0)
            return null;

        var (hours, materials, cut, gap) = (_piece.BenchHours, _piece.Materials, 0m, Gap);
        foreach (var (i, way) in ways.Index())
        {
            var part = gap / (ways.Count - i);
            gap -= part;
            if (way == RemedyKind.WorkFaster && part > 0)
                hours -= part / _year.PerBenchHour;
            else if (way == RemedyKind.CheaperMaterials)
                materials -= part;
            else if (way == RemedyKind.SpendLess)
                cut = part * _year.BenchHours / hours;
        }

        if (Gap == 0)
            return new BalancedRemedy(Rounding.Nearest(BenchMinutes, MinuteDecimals), _money.Nearest(materials), _money.Least(0), true);
        var (minutes, allowed, saved) = (Rounding.Down(hours * 60, MinuteDecimals), _money.Most(materials), _money.Least(cut));
        var floor = (_year.Pool - saved) / _year.BenchHours * minutes / 60 + allowed - _piece.SecondsCredit;
        return new BalancedRemedy(minutes, allowed, saved, _net.Reaches(floor));
    }

    private Piece WithGoodShare(decimal goodShare)
    {
        var making = _piece.Design.Making;
        var worst = making.Steps?.Index().MinBy(step => step.Item.GoodShare).Index;
        var better = making.Steps is { } steps
            ? making with { Steps = [.. steps.Select((step, i) => i == worst ? step with { GoodShare = goodShare } : step)] }
            : making with { GoodShare = goodShare };
        return Piece.Of(_piece.Design with { Making = better }, _year).Value;
    }

    private static decimal Cost(Piece piece) => piece.BenchCost + piece.Materials - piece.SecondsCredit;

    private static Remedy Possible(RemedyKind kind, decimal before, decimal after, string saying) =>
        new(kind, before, after, string.Format(CultureInfo.InvariantCulture, saying, Text(before), Text(after)), null);

    private static Remedy Unchanged(RemedyKind kind, decimal now) => new(kind, now, now, "Nothing needs to change: the price carries its part of the year.", null);

    private static Remedy Not(RemedyKind kind, decimal? before, string reason, string saying) => new(kind, before, null, saying, reason);

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);
}
