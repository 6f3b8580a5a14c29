using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
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

    internal RemedyFigures(PriceCheck check)
    {
        (Check, UnitCost, _formulas) = (check, check.Prices.Floor.UnitCost, new RemedyFormulas<Figure>(check));
        FixedHours = UnitCost.FixedHours;
        if (!check.CarriesItsShare && WorstShare < 1 && !UnitCost.SecondsPayMoreThanTheyCost)
            BetterYield = new BetterYield(this);
    }

    public PriceCheck Check { get; }

    public UnitCost UnitCost { get; }

    public StudioYear Year => UnitCost.Year;

    public decimal Net => Check.Sale.Net;

    /// <summary>
    /// False if selling at this price brings the studio nothing although a floor is due: then only another price,
    /// channel or term of the channel can help.
    /// </summary>
    public bool CanBeHelped => Check.CarriesItsShare || Rounding.Settle(Net) > 0;

    /// <summary>net(p) - M + C: what the price leaves for bench time.</summary>
    public decimal Room => _formulas.Room.Value;

    public bool HasRoom => _formulas.HasRoom;

    /// <summary>What the price is short of; 0 where it carries its share.</summary>
    public decimal Gap => _formulas.Gap.Value;

    /// <summary>Less for bench time to recover in the year.</summary>
    public decimal Cut => _formulas.Cut.Value;

    /// <summary>t': bench hours a sold piece that the price pays for; null where it pays for none, or for any number.</summary>
    public decimal? EnoughHours => _formulas.PaysForSomeTime ? _formulas.EnoughHours.Value : null;

    /// <summary>Bench hours a sold piece that must not be shortened.</summary>
    public decimal FixedHours { get; }

    /// <summary>M': materials a sold piece; negative where even none would be too much.</summary>
    public decimal EnoughMaterials => _formulas.EnoughMaterials.Value;

    /// <summary>Materials that a new design with these minutes may use.</summary>
    public decimal NewMaterials => _formulas.NewMaterials.Value;

    /// <summary>The maker's hours a week, with the same weeks and helpers, that would be enough; null where no number is.</summary>
    public decimal? WeekHours => _formulas.MoreHoursHelp ? _formulas.WeekHours.Value : null;

    /// <summary>
    /// Whether pay per hour still fits into the need on a longer working day. Pay of any other period does not grow with the hours.
    /// </summary>
    /// <param name="hoursPerDay">Working hours on each working day.</param>
    internal bool PayAllows(decimal hoursPerDay) =>
        Year.Profile.Pay is not { Per: PayPer.Hour } pay || Year.Need.Reaches(pay.Amount * Year.Workdays * hoursPerDay + Year.NotDeductible);

    /// <summary>Y' = Y* - cut: the profit that would still be needed.</summary>
    public decimal ProfitLeft => _formulas.ProfitLeft.Value;

    /// <summary>Y' - T(Y').</summary>
    public decimal LeftAfterTax => _formulas.LeftAfterTax.Value;

    /// <summary>Further income, already taxed, that makes up for the cut. Income beyond what the household needs closes nothing yet.</summary>
    public decimal MoreNetIncome => _formulas.MoreNetIncome.Value;

    /// <summary>The good share, with steps the lowest.</summary>
    public decimal WorstShare => WorstStep is { } worst ? UnitCost.Design.Making.Steps![worst].GoodShare : UnitCost.Design.Making.GoodShare;

    /// <summary>Index of the step that loses most, the first of equals; null without steps.</summary>
    public int? WorstStep => UnitCost.Design.Making.Steps?.Index().MinBy(step => step.Item.GoodShare).Index;

    /// <summary>Null where nothing is lost, nothing need change, or better yield would raise the floor.</summary>
    public BetterYield? BetterYield { get; }

    /// <summary>A year's hours at the bench that helpers bring, and go on to bring.</summary>
    internal static decimal HelperHoursOf(StudioYear year) => year.Profile.Helpers.Sum(helper => helper.BenchHoursPerYear);
}
