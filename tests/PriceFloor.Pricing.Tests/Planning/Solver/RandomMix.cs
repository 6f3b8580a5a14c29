namespace PriceFloor.Pricing.Tests.Planning.Solver;

/// <summary>Mix problems drawn from a seed: the same seed, the same problem.</summary>
public sealed class RandomMix(int seed)
{
    private readonly Random _random = new(seed);

    /// <summary>Few activities of few pieces, so that all mixes can be listed; small numbers, so that many mixes are equally good.</summary>
    public ProductMixProblem Tiny(MixGoal goal)
    {
        var limits = _random.Next(3);
        var activities = Several(1 + _random.Next(4), () => new Activity(
            Any(-2m, 0, 3, 5, 5, 7.5m, 10, 10m / 3),
            Any(0.5m, 1, 1, 2, 1m / 3, 2m / 3, 0.6833m),
            Several(limits, () => Any(0m, 0, 1, 0.5m, 1m / 3, 0.25m)),
            Any(0m, 0, 0, 1, 2),
            _random.Next(4) == 0 ? null : 2 + _random.Next(4)));
        return new ProductMixProblem(activities, Any(0m, 10, 20, 40, 100m / 3), Any(1m, 2, 3, 4, 5, 1m / 3, 8m / 3),
            Several(limits, i => new Resource($"kiln {i}", Any(1m, 2, 3, 0.75m))), goal);
    }

    /// <summary>Like a studio's year: contributions in cents, hours and loads with a few decimals, alike lines now and then.</summary>
    public ProductMixProblem Year(int activities, int limits, MixGoal goal)
    {
        var lines = Several(activities, () => new Activity(
            Between(-3, 80, 2),
            Between(0.2m, 2.5m, 4),
            Several(limits, () => _random.Next(3) == 0 ? 0 : Between(0.02m, 0.3m, 3)),
            _random.Next(3) == 0 ? _random.Next(4) : 0,
            _random.Next(5) == 0 ? null : 4 + _random.Next(40)));
        if (activities > 2 && _random.Next(3) == 0)
            lines[^1] = lines[0] with { Minimum = 0, Maximum = 7 };
        return Within(lines, limits, goal);
    }

    /// <summary>Lines that are priced at their floors, rounded up to a cent: 36.34 or so an hour, all of them.</summary>
    public ProductMixProblem NearlyAlike(int activities)
    {
        var lines = Several(activities, () => Between(10, 150, 1) / 60).ConvertAll(hours =>
            new Activity(Rounding.Up(52_345.67m / 1440.5m * hours, 2), hours, [Between(0.02m, 0.3m, 3)], 0, _random.Next(5, 100)));
        return new ProductMixProblem(lines, 30_000, 1234.5m, [new Resource("kiln", 150)], MixGoal.FewestHours);
    }

    /// <summary>Any whole units that the minimums, the market and the limits allow; null where chance found none.</summary>
    public decimal[]? Plan(ProductMixProblem problem)
    {
        var units = problem.Activities.Select(activity => activity.Minimum).ToArray();
        if (!Enumeration.Fits(problem, units))
            return null;
        for (var tries = 0; tries < 40; tries++)
        {
            var i = _random.Next(units.Length);
            var more = _random.Next(1, 20);
            units[i] += more;
            if (units[i] > problem.Activities[i].Maximum || !Enumeration.Fits(problem, units))
                units[i] -= more;
        }

        return units;
    }

    private ProductMixProblem Within(IList<Activity> lines, int limits, MixGoal goal)
    {
        var share = Between(0.05m, 0.7m, 2);
        decimal Total(Func<Activity, decimal> of) => lines.Sum(line => of(line) * (line.Maximum ?? 30));
        return new ProductMixProblem(
            [.. lines],
            decimal.Round(Total(line => decimal.Max(0, line.Contribution)) * share * Between(0.5m, 1.6m, 2), 2),
            decimal.Round(Total(line => line.Hours) * share, 1),
            Several(limits, k => new Resource($"kiln {k}", decimal.Round(Total(line => line.Loads[k]) * Between(0.05m, 0.7m, 2), 0))),
            goal);
    }

    private decimal Between(decimal least, decimal most, int decimals) =>
        decimal.Round(least + (most - least) * (decimal)_random.NextDouble(), decimals);

    private decimal Any(params decimal[] values) => values[_random.Next(values.Length)];

    private static List<T> Several<T>(int count, Func<int, T> make) => [.. Enumerable.Range(0, count).Select(make)];

    private static List<T> Several<T>(int count, Func<T> make) => Several(count, _ => make());
}
