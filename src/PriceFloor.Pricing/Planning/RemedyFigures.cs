using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;
using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// What the ways to mend a price are computed from, unrounded. A price that nets 56.00 for 2 hours at 30.00 leaves a room of 56.00 and
/// a gap of 4.00; 56 / 30 = 1.8667 hours would be enough.
/// </summary>
public sealed class RemedyFigures
{
    internal RemedyFigures(PriceCheck check)
    {
        Check = check;
        Piece = check.Prices.Floor.Piece;
        var calendar = Year.Profile.Calendar;
        Room = Net - Piece.Materials + Piece.SecondsCredit;
        // A price at or above its floor needs no change at all.
        Gap = check.CarriesItsShare ? 0 : decimal.Max(0, Cost(Piece) - Net);
        Cut = check.CarriesItsShare ? 0 : decimal.Max(0, Year.Pool - Room * Year.BenchHours / Piece.BenchHours);
        HasRoom = Rounding.Settle(Room) > 0;
        FixedHours = Piece.Time.FixedHours / Piece.SoldShare;
        EnoughMaterials = Piece.Materials - Gap;
        NewMaterials = Net + Piece.SecondsCredit - Piece.BenchCost;
        if (HasRoom && Year.Pool > 0)
            EnoughHours = Room / Year.PerBenchHour;
        if (HasRoom && calendar.BenchShare > 0 && !check.CarriesItsShare)
            WeekHours = (Year.Pool * Piece.BenchHours / Room - HelperHours) * calendar.DaysPerWeek / (Year.Workdays * calendar.BenchShare);
        ProfitLeft = decimal.Max(0, Year.Profit - Cut);
        LeftAfterTax = ProfitLeft - Year.TaxRules.On(ProfitLeft);
        if (!check.CarriesItsShare && WorstShare < 1 && !Piece.SecondsPayMoreThanTheyCost)
            BetterYield = new BetterYield(this);
    }

    public PriceCheck Check { get; }

    public Piece Piece { get; }

    public StudioYear Year => Piece.Year;

    public decimal Net => Check.Sale.Net;

    /// <summary>False if selling at this price brings the studio nothing although a floor is due: then only another price, channel or term of the channel can help.</summary>
    public bool CanBeHelped => Check.CarriesItsShare || Rounding.Settle(Net) > 0;

    /// <summary>net(p) - M + C: what the price leaves for bench time.</summary>
    public decimal Room { get; }

    public bool HasRoom { get; }

    /// <summary>What the price is short of; 0 where it carries its share.</summary>
    public decimal Gap { get; }

    /// <summary>Less for bench time to recover in the year.</summary>
    public decimal Cut { get; }

    /// <summary>t': bench hours a sold piece that the price pays for; null where it pays for none, or for any number.</summary>
    public decimal? EnoughHours { get; }

    /// <summary>Bench hours a sold piece that must not be shortened.</summary>
    public decimal FixedHours { get; }

    /// <summary>M': materials a sold piece; negative where even none would be too much.</summary>
    public decimal EnoughMaterials { get; }

    /// <summary>Materials that a new design with these minutes may use.</summary>
    public decimal NewMaterials { get; }

    /// <summary>The year's hours at the bench that helpers bring, and go on to bring.</summary>
    public decimal HelperHours => Year.Profile.Helpers.Sum(helper => helper.BenchHoursPerYear);

    /// <summary>The maker's hours a week, with the same weeks and helpers, that would be enough; null where no number is.</summary>
    public decimal? WeekHours { get; }

    /// <summary>Whether pay per hour still fits into the need on a longer working day. Pay of any other period does not grow with the hours.</summary>
    /// <param name="hoursPerDay">Working hours on each working day.</param>
    internal bool PayAllows(decimal hoursPerDay) =>
        Year.Profile.Pay is not { Per: PayPer.Hour } pay || Year.Need.Reaches(pay.Amount * Year.Workdays * hoursPerDay + Year.NotDeductible);

    /// <summary>Y' = Y* - cut: the profit that would still be needed.</summary>
    public decimal ProfitLeft { get; }

    /// <summary>Y' - T(Y').</summary>
    public decimal LeftAfterTax { get; }

    /// <summary>Further income, already taxed, that makes up for the cut. Income beyond what the household needs closes nothing yet.</summary>
    public decimal MoreNetIncome => Cut == 0 ? 0 : Year.Need - LeftAfterTax + (Year.Profile.Pay is null ? decimal.Max(0, Year.NetIncome - Year.Household) : 0);

    /// <summary>The good share, with steps the lowest.</summary>
    public decimal WorstShare => WorstStep is { } worst ? Piece.Design.Making.Steps![worst].GoodShare : Piece.Design.Making.GoodShare;

    /// <summary>Index of the step that loses most, the first of equals; null without steps.</summary>
    public int? WorstStep => Piece.Design.Making.Steps?.Index().MinBy(step => step.Item.GoodShare).Index;

    /// <summary>Null where nothing is lost, nothing need change, or better yield would raise the floor.</summary>
    public BetterYield? BetterYield { get; }

    internal static decimal Cost(Piece piece) => piece.BenchCost + piece.Materials - piece.SecondsCredit;
}
