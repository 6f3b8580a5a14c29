using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>One price that is to be brought to a goal: what the ways to do it have in common.</summary>
internal sealed class RemedyCase
{
    public const int MinuteDecimals = 2;

    public RemedyCase(PriceCheck check, RemedyGoal goal)
    {
        (Check, UnitCost) = (check, check.Prices.Floor.UnitCost);
        Floor = new RemedyFigures(check, RemedyBound.OfTheFloor(check));
        Target = goal == RemedyGoal.Target && RemedyBound.OfTheTarget(check) is { } bound ? new RemedyFigures(check, bound) : null;
        Bounds = Target is null ? [Floor] : [Floor, Target];
        IsReached = Target is null ? check.CarriesItsShare : check.Verdict == Verdict.MeetsTarget;
        ListedWholesaleDecides = Target is not null && check.Prices.Floor.HighestWholesale is { } highest
            && !check.Sale.BeforeTax.Reaches(highest * Year.Profile.PriceRule.RetailMultiple);
    }

    public PriceCheck Check { get; }

    public UnitCost UnitCost { get; }

    public StudioYear Year => UnitCost.Year;

    public Currency Money => Year.Currency;

    /// <summary>What the floor on the channel asks.</summary>
    public RemedyFigures Floor { get; }

    /// <summary>What the target asks besides; null toward the floor, and on a wholesale channel.</summary>
    public RemedyFigures? Target { get; }

    public IReadOnlyList<RemedyFigures> Bounds { get; }

    /// <summary>Whether the price is enough as it is.</summary>
    public bool IsReached { get; }

    /// <summary>False if selling at this price brings the studio nothing: then only another price, channel or term of the channel can help.</summary>
    public bool CanBeHelped => IsReached || Rounding.Settle(Check.Sale.Net) > 0;

    /// <summary>True if what shops pay already makes the retail target higher than this price, whatever the piece costs.</summary>
    public bool ListedWholesaleDecides { get; }

    /// <summary>Whether something is left for the hours of a piece, by each bound.</summary>
    public bool HasRoom => Bounds.All(bound => bound.HasRoom);

    /// <summary>The least of what both bounds allow; null if one of them allows none, or any number.</summary>
    public decimal? EnoughHours => Bounds.All(bound => bound.EnoughHours is not null) ? Bounds.Min(bound => bound.EnoughHours) : null;

    public decimal EnoughMaterials => Bounds.Min(bound => bound.EnoughMaterials);

    public decimal NewMaterials => Bounds.Min(bound => bound.NewMaterials);

    public decimal Cut => Bounds.Max(bound => bound.Cut);

    public static Remedy Possible(RemedyKind kind, decimal? before, decimal? after, string inWords) => new(kind, before, after, inWords, null);

    public Remedy Unchanged(RemedyKind kind, decimal? now) => new(kind, now, now, Target is null
        ? "Nothing needs to change: the price carries its part of the year."
        : "Nothing needs to change: the price keeps the studio's price rule.", null);

    public static Remedy Not(RemedyKind kind, decimal? before, Code reason, string inWords) => new(kind, before, null, inWords, reason);

    /// <summary>The same ending for all ways that need room.</summary>
    public static Remedy BelowMaterials(RemedyKind kind, decimal? before, string noHelp) => Not(kind, before, RemedyReasons.PriceBelowMaterials,
        $"The price does not even pay for the materials, so {noHelp}.");
}
