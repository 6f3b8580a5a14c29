using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// What a working hour would leave the household if every carrying hour earned what one price pays. Unrounded. At 28.00 for each of 2,000
/// hours, 24,000 of expenses and no tax: (56,000 - 24,000) / 2,000 h = 16.00.
/// </summary>
public sealed class TakeHome
{
    private TakeHome(PriceCheck check)
    {
        var formulas = new TakeHomeFormulas<Figure>(check.EarnedPerBenchHour, check.Prices.Floor.UnitCost.Year);
        (Profit, TaxedProfit, PerHour) = (formulas.Profit.Value, formulas.TaxedProfit.Value, formulas.PerHour.Value);
    }

    /// <summary>Y: the year's profit before tax; negative if the price does not even pay the expenses.</summary>
    public decimal Profit { get; }

    /// <summary>The part of it that is taxed: max(0, Y).</summary>
    public decimal TaxedProfit { get; }

    /// <summary>For each working hour, at the bench or not; negative if the household would have to pay in.</summary>
    public decimal PerHour { get; }

    /// <summary>Refused with <c>too-large</c> if figures pass exactness.</summary>
    public static Outcome<TakeHome> Of(PriceCheck check) => Outcome<TakeHome>.Guard(() => new TakeHome(check));
}
