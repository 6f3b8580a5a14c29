using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// Where each unit of a price goes, for one piece that leaves for good. The parts add up to what the buyer pays for it, shipping and tax
/// included. Unrounded. 58.00 with 2.4 % + 0.25 in fees and a floor of 60.00: fees 1.642, expenses 24.00, household 36.00, and -3.642.
/// </summary>
public sealed class PriceParts
{
    private static readonly PricePart[] s_ofTheFloor = [PricePart.Development, PricePart.Materials, PricePart.Expenses,
        PricePart.Tax, PricePart.Household];

    private readonly decimal[] _amounts = new decimal[Enum.GetValues<PricePart>().Length];

    private PriceParts(PriceCheck check)
    {
        Check = check;
        var formulas = new PartsFormulas<Figure>(check);
        (Paid, ForMaterials, ForBenchTime) = (formulas.Paid.Value, formulas.ForMaterials.Value, formulas.ForBenchTime.Value);
        this[PricePart.UsualDiscount] = formulas.Discount.Value;
        this[PricePart.SalesTax] = formulas.SalesTax.Value;
        this[PricePart.ShopShare] = formulas.ShopShare.Value;
        this[PricePart.Fees] = formulas.Fees.Value;
        this[PricePart.Shipping] = formulas.Shipping.Value;
        this[PricePart.PackingAndStall] = formulas.PackingAndStall.Value;
        this[PricePart.Returns] = formulas.Returns.Value;
        this[PricePart.Losses] = formulas.Losses.Value;
        this[PricePart.Development] = formulas.Development.Value;
        this[PricePart.Materials] = formulas.Materials.Value;
        this[PricePart.Expenses] = formulas.Expenses.Value;
        this[PricePart.Tax] = formulas.Tax.Value;
        this[PricePart.Household] = formulas.Household.Value;
        this[PricePart.AboveFloor] = check.AboveFloor;
    }

    public PriceCheck Check { get; }

    /// <summary>
    /// What the buyer pays a piece at the listed price, tax and shipping included. Two pieces of 50.00 and 10.00 shipping at 20 % on top: 66.00.
    /// </summary>
    public decimal Paid { get; }

    /// <summary>Materials and one-off cost that the price must pay: 6.00 of glass less 1.50 that seconds bring is 4.50; never below 0.</summary>
    public decimal ForMaterials { get; }

    /// <summary>
    /// The rest of the floor on the channel, which its hours owe to the year: a floor of 60.00 with 4.50 of materials leaves 55.50.
    /// </summary>
    public decimal ForBenchTime { get; }

    /// <summary>One part. 58.00 with 2.4 % + 0.25 in fees: fees are 1.642.</summary>
    public decimal this[PricePart part]
    {
        get => _amounts[(int)part];
        private init => _amounts[(int)part] = value;
    }

    /// <summary>All parts in order: they add up to <see cref="Paid"/>, but for the dust of division.</summary>
    public IReadOnlyList<(PricePart Part, decimal Amount)> Parts => [.. Enum.GetValues<PricePart>().Select(part => (part, this[part]))];

    /// <summary>
    /// All parts in the currency's decimals, still adding up to what the buyer pays to the nearest. Sales tax and the floor's own parts
    /// are what they are on every channel; what does not add up falls on the rest, one minor unit at most each, above the floor first.
    /// </summary>
    public IReadOnlyList<(PricePart Part, decimal Amount)> Rounded
    {
        get
        {
            var money = Check.Prices.Floor.UnitCost.Year.Currency;
            var salesTax = money.Round(this[PricePart.SalesTax]);
            var floor = money.Round(ForMaterials + ForBenchTime);
            PricePart[] rest = [.. Enum.GetValues<PricePart>().Except([PricePart.SalesTax, .. s_ofTheFloor])];
            return [.. s_ofTheFloor.Zip(money.NearestTogether([.. s_ofTheFloor.Select(part => this[part])], floor))
                .Concat(rest.Zip(money.NearestTogether([.. rest.Select(part => this[part])], money.Round(Paid) - salesTax - floor)))
                .Append((PricePart.SalesTax, salesTax)).OrderBy(part => part.Item1)];
        }
    }

    /// <summary>The hours of a piece by what they are, and what each owes to the year: all of <see cref="ForBenchTime"/>. Unrounded.</summary>
    public IReadOnlyList<(PieceWork Work, decimal Hours, decimal Amount)> Work
    {
        get
        {
            var (piece, onChannel) = (Check.Prices.Floor.UnitCost, Check.Prices.ChannelFloor);
            (PieceWork Work, decimal Hours)[] hours =
            [
                (PieceWork.Making, piece.BenchHours - piece.ReworkHours - piece.DevelopmentHours),
                (PieceWork.Rework, piece.ReworkHours),
                (PieceWork.Development, piece.DevelopmentHours),
                (PieceWork.Selling, onChannel.SellingHours),
            ];
            return [.. hours.Select(one => (one.Work, one.Hours, ForBenchTime * (one.Hours / onChannel.Hours)))];
        }
    }

    /// <summary>The same in the currency's decimals, adding up to the rounded parts expenses, tax and household.</summary>
    public IReadOnlyList<(PieceWork Work, decimal Hours, decimal Amount)> RoundedWork
    {
        get
        {
            var whole = Rounded.Where(part => part.Part is PricePart.Expenses or PricePart.Tax or PricePart.Household).Sum(part => part.Amount);
            var amounts = Check.Prices.Floor.UnitCost.Year.Currency.NearestTogether([.. Work.Select(one => one.Amount)], whole);
            return [.. Work.Zip(amounts, (one, amount) => (one.Work, one.Hours, amount))];
        }
    }

    /// <summary>The parts of a checked price.</summary>
    public static Outcome<PriceParts> Of(PriceCheck check) => Outcome<PriceParts>.Guard(() => new PriceParts(check));
}
