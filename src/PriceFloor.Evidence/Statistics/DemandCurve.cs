namespace PriceFloor.Evidence.Statistics;

/// <summary>
/// How many orders a price brings: rate(p) = rate1 * exp(-sigma * (p - p1)/p1). It always has a best price, and one for few pieces too
/// (Gallego and van Ryzin 1994).
/// </summary>
/// <param name="Price">p1: a price that was asked, above 0.</param>
/// <param name="Rate">Orders there, in one unit of time; above 0.</param>
/// <param name="Sensitivity">Sigma, above 0.</param>
public sealed record DemandCurve(decimal Price, decimal Rate, decimal Sensitivity)
{
    private const int ChanceDecimals = 4;

    /// <summary>p1/sigma: what a price is above its cost at best; unrounded.</summary>
    public decimal Above => Price / Sensitivity;

    /// <summary>Orders at a price in one unit of time, to 4 decimals.</summary>
    /// <exception cref="OverflowException">More than can be counted.</exception>
    public decimal RateAt(decimal price) => Settled.Of(At(price), Estimate.ShareDecimals);

    /// <summary>The best price.</summary>
    /// <param name="cost">V: the price that brings what a piece must bring; unrounded.</param>
    /// <param name="pieces">n: pieces that are left; null where more can be made.</param>
    /// <param name="time">T: how long it can wait.</param>
    /// <param name="decimals">Decimals of the price.</param>
    public decimal Best(decimal cost, int? pieces, decimal time, int decimals) => pieces is not { } left
        ? Settled.Of(cost + Above, decimals)
        : Settled.Of((double)cost + (double)Above * (1 + LogOfRatio(At(cost) * (double)time / double.E, left)), decimals);

    /// <summary>Of so many pieces, the share that is sold within a time, to 4 decimals; orders come by themselves (Poisson).</summary>
    public decimal SoldShare(decimal price, int pieces, decimal time)
    {
        // Of n pieces, sum over i < n of P(orders > i) are sold.
        var mean = At(price) * (double)time;
        var (term, below, sold) = (-mean, 0d, 0d);
        for (var i = 0; i < pieces; i++)
        {
            below += double.Exp(term);
            sold += double.Max(0, 1 - below);
            term += double.Log(mean / (i + 1));
        }

        return Settled.Of(sold / pieces, ChanceDecimals);
    }

    /// <summary>ln(S_n/S_(n-1)), S_n = sum of q^i/i! for i = 0..n: the share of the last term is carried, so that nothing grows too large.</summary>
    internal static double LogOfRatio(double q, int pieces)
    {
        var (share, next) = (1d, 0d);
        for (var i = 1; i <= pieces; i++)
        {
            next = share * q / i;
            share = next / (1 + next);
            if (next < 1e-300)
                return 0;
        }

        return double.LogP1(next);
    }

    private double At(decimal price) => (double)Rate * double.Exp(-(double)Sensitivity * (double)((price - Price) / Price));
}
