namespace PriceFloor.Evidence.Statistics;

/// <summary>What two neighbouring times say of a rate: before something was changed, and after.</summary>
public sealed class RateChange
{
    /// <summary>Of the normal distribution: 0.9 and 0.8, so that a change is seen eight times in ten and imagined once in ten.</summary>
    private const double SurelySeen = 1.2816, SeldomImagined = 0.8416;

    private const int ChanceDecimals = 2;

    private readonly (decimal Orders, decimal Time) _before, _after;

    private RateChange(RatePrior prior, Sales before, Sales after) =>
        (_before, _after) = ((prior.Orders + before.Orders, prior.Exposure + before.Exposure),
            (prior.Orders + after.Orders, prior.Exposure + after.Exposure));

    /// <summary>1 - rate2/rate1 of the posterior means, to 4 decimals; below 0 where more was sold after.</summary>
    public decimal Lost => Settled.Of(1 - _after.Orders / _after.Time * (_before.Time / _before.Orders), Estimate.ShareDecimals);

    /// <summary>How likely the rate is lower after than before, to 2 decimals.</summary>
    public decimal Fell => Settled.Of(1 - Chance(1, 1), ChanceDecimals);

    /// <param name="prior">What the shelf says.</param>
    /// <param name="before">Orders before; some time above 0.</param>
    /// <param name="after">Orders after.</param>
    public static RateChange Of(RatePrior prior, Sales before, Sales after) => new(prior, before, after);

    /// <summary>How likely the change paid, to 2 decimals: that an hour, or a week, after it leaves more than before.</summary>
    /// <param name="before">What one order left before: k1.</param>
    /// <param name="after">What one leaves after: k2.</param>
    public decimal Paid(decimal before, decimal after) => Settled.Of(Chance((double)before, (double)after), ChanceDecimals);

    /// <summary>How many orders each side needs to tell a loss of this share from none, whole, up; null where there is nothing to tell.</summary>
    /// <param name="share">What may be lost: below 1, not 0.</param>
    public static decimal? OrdersToTell(decimal share)
    {
        if (share is >= 1 or 0)
            return null;
        var (width, fall) = (SurelySeen + SeldomImagined, double.Log((double)(1 - share)));
        var orders = 2 * width * width / (fall * fall);
        return orders < 1e15 ? Rounding.Up(Settled.Of(orders, Estimate.ShareDecimals), 0) : null;
    }

    /// <summary>P(rate2 * k2 > rate1 * k1).</summary>
    internal double Chance(double before, double after)
    {
        if (before <= 0 || after <= 0)
            if (before >= 0 || after >= 0)
                return after > 0 || (after == 0 && before < 0) ? 1 : 0;
        var ratio = before / after;
        var (first, second) = ((double)_before.Time, ratio * (double)_after.Time);
        var below = Quantiles.BetaBelow((double)_after.Orders, (double)_before.Orders, second / (first + second));
        return after > 0 ? 1 - below : below;
    }
}
