namespace PriceFloor.Evidence.Statistics;

/// <summary>
/// How buyers answer to price: a price that is 1 % higher loses about sigma % of them. One for the whole shelf, as one design alone hardly ever
/// decides it. It says what happened together, not why: fashion and season ride along.
/// </summary>
/// <param name="Estimate">Sigma to 4 decimals, its ends to 2.</param>
/// <param name="ChangedOrders">Orders at prices that came after a design's first.</param>
/// <param name="Changes">Designs with two prices or more.</param>
public sealed record Sensitivity(Estimate Estimate, decimal ChangedOrders, int Changes)
{
    /// <summary>With fewer orders after a change nothing is taken from the shelf: what is known in general stands.</summary>
    public const int FewOrders = 30;

    /// <summary>A gamma distribution of mean 2: nine in ten between 0.68 and 3.88.</summary>
    public const int PriorShape = 4, PriorRate = 2;

    private const int Points = 801, EndDecimals = 2;
    private const double Step = 0.01;

    /// <summary>Whether it is only what is known in general.</summary>
    public bool IsGeneral => ChangedOrders < FewOrders;

    /// <summary>Of designs with the runs of each: one price each, in order of time.</summary>
    public static Sensitivity Of(IEnumerable<IReadOnlyList<PricedSales>> designs, decimal level)
    {
        var changed = designs.Select(runs => runs.Where(run => run.Sales.Exposure > 0).ToList())
            .Where(runs => runs.Exists(run => run.Price != runs[0].Price)).ToList();
        var orders = changed.Sum(runs => runs.Where(run => run.Price != runs[0].Price).Sum(run => run.Sales.Orders));
        return new Sensitivity(orders < FewOrders ? General(level) : OnGrid(changed, PriorShape, level), orders, changed.Count);
    }

    /// <summary>The most likely sigma without what is known in general.</summary>
    internal static decimal MostLikely(IReadOnlyList<List<PricedSales>> designs)
    {
        var best = Enumerable.Range(0, 10 * Points).Select(i => i * Step / 10)
            .MaxBy(sigma => designs.Sum(runs => LogLikelihood(runs, sigma)));
        return Settled.Of(best, 3);
    }

    private static Estimate General(decimal level)
    {
        var (low, high) = Estimate.Ends(level);
        return new Estimate((decimal)PriorShape / PriorRate, Settled.Of(Quantiles.Gamma(PriorShape, PriorRate, low), EndDecimals),
            Settled.Of(Quantiles.Gamma(PriorShape, PriorRate, high), EndDecimals));
    }

    private static Estimate OnGrid(List<List<PricedSales>> designs, int shape, decimal level)
    {
        var logs = new double[Points];
        for (var i = 0; i < Points; i++)
        {
            var sigma = i * Step;
            logs[i] = (shape - 1) * double.Log(sigma) - PriorRate * sigma;
            foreach (var runs in designs)
                logs[i] += LogLikelihood(runs, sigma);
        }

        var most = logs.Max();
        var weights = logs.Select((log, i) => double.Exp(log - most) * Simpson(i)).ToArray();
        var (all, moment) = (0d, 0d);
        for (var i = 0; i < Points; i++)
            (all, moment) = (all + weights[i], moment + weights[i] * i * Step);
        var (low, high) = Estimate.Ends(level);
        return new Estimate(Settled.Of(moment / all, Estimate.ShareDecimals), Reaching(weights, low * all), Reaching(weights, high * all));
    }

    private static double Simpson(int point) => point is 0 or Points - 1 ? 1 : point % 2 == 1 ? 4 : 2;

    private static decimal Reaching(double[] weights, double share)
    {
        var (sum, i) = (weights[0], 0);
        while (sum < share && i < Points - 1)
            sum += weights[++i];
        return Settled.Of(i * Step, EndDecimals);
    }

    /// <summary>Each order was at one of the design's prices: how likely at the one that it was.</summary>
    private static double LogLikelihood(List<PricedSales> runs, double sigma)
    {
        var (all, sum, first) = (0d, 0d, (double)runs[0].Price);
        foreach (var run in runs)
            all += (double)run.Sales.Exposure * double.Exp(-sigma * ((double)run.Price / first - 1));
        foreach (var run in runs)
            if (run.Sales.Orders > 0)
                sum += (double)run.Sales.Orders
                    * (double.Log((double)run.Sales.Exposure / all) - sigma * ((double)run.Price / first - 1));
        return sum;
    }
}
