using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// What the ways to fix a price are computed from, unrounded. A price that nets 56.00 for 2 hours at 30.00 leaves a room of 56.00 and
/// a gap of 4.00; 56 / 30 = 1.8667 hours would be enough.
/// </summary>
public sealed class RemedyFigures
{
    private readonly RemedyFormulas<Figure> _formulas;

    internal RemedyFigures(PriceCheck check, RemedyBound bound)
    {
        (Check, Bound, UnitCost) = (check, bound, check.Prices.Floor.UnitCost);
        _formulas = new RemedyFormulas<Figure>(UnitCost, bound);
        FixedHours = UnitCost.FixedHours;
        if (!bound.IsKept && WorstShare < 1 && !UnitCost.SecondsPayMoreThanTheyCost)
            BetterYield = new BetterYield(this);
    }

    public PriceCheck Check { get; }

    public UnitCost UnitCost { get; }

    public StudioYear Year => UnitCost.Year;

    /// <summary>What a piece may cost at this price: its net, or toward the target what the target leaves for the floor.</summary>
    public decimal Amount => Bound.Amount;

    /// <summary>Hours of selling that the amount pays for too.</summary>
    public decimal SellingHours => Bound.SellingHours;

    /// <summary>What these hours must recover.</summary>
    public decimal SellingCost => _formulas.SellingCost.Value;

    /// <summary>The amount less materials, with what seconds bring: what is left for the hours of a piece.</summary>
    public decimal Room => _formulas.Room.Value;

    public bool HasRoom => _formulas.HasRoom;

    /// <summary>What the price is short of; 0 if it is enough.</summary>
    public decimal Gap => _formulas.Gap.Value;

    /// <summary>Less for bench time to recover in the year.</summary>
    public decimal Cut => _formulas.Cut.Value;

    /// <summary>
    /// t': bench hours a sold piece that the price pays for, 0 or less if selling takes it all; null if it pays for none, or for any number.
    /// </summary>
    public decimal? EnoughHours => _formulas.PaysForSomeTime ? _formulas.EnoughHours.Value : null;

    /// <summary>Bench hours a sold piece that must not be shortened.</summary>
    public decimal FixedHours { get; }

    /// <summary>M': materials a sold piece; negative if even none would be too much.</summary>
    public decimal EnoughMaterials => _formulas.EnoughMaterials.Value;

    /// <summary>Materials that a new design with these minutes may use.</summary>
    public decimal NewMaterials => _formulas.NewMaterials.Value;

    /// <summary>The maker's hours a week, with the same weeks and helpers, that would be enough; null if no number is.</summary>
    public decimal? WeekHours => _formulas.MoreHoursHelp ? _formulas.WeekHours.Value : null;

    /// <summary>The good share, with steps the lowest.</summary>
    public decimal WorstShare => WorstStep is { } worst ? UnitCost.Design.Making.Steps![worst].GoodShare : UnitCost.Design.Making.GoodShare;

    /// <summary>Index of the step that loses most, the first of equals; null without steps.</summary>
    public int? WorstStep => UnitCost.Design.Making.Steps?.Index().MinBy(step => step.Item.GoodShare).Index;

    /// <summary>Null if nothing is lost, nothing need change, or better yield would raise the floor.</summary>
    public BetterYield? BetterYield { get; }

    internal RemedyBound Bound { get; }

    /// <summary>A year's hours at the bench that helpers bring, and go on to bring.</summary>
    internal static decimal HelperHoursOf(StudioYear year) => year.Profile.Helpers.Sum(helper => helper.BenchHoursPerYear);
}
