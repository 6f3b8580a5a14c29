namespace PriceFloor.Pricing;

/// <summary>What the units of a mix come to, straight from the problem.</summary>
internal static class MixTotals
{
    public static decimal Contribution(MixProblem problem, IReadOnlyList<decimal> units) => Sum(problem, units, choice => choice.Contribution);

    public static decimal Hours(MixProblem problem, IReadOnlyList<decimal> units) => Sum(problem, units, choice => choice.Hours);

    public static decimal Loads(MixProblem problem, IReadOnlyList<decimal> units, int limit) => Sum(problem, units, choice => choice.Loads[limit]);

    /// <summary>The hours and each limit: name, what one of a choice takes, what there is.</summary>
    public static IEnumerable<(string Name, Func<MixChoice, decimal> Takes, decimal Available)> Limits(MixProblem problem) =>
        [("hours", choice => choice.Hours, problem.Hours), .. problem.Limits.Select<MixLimit, (string, Func<MixChoice, decimal>, decimal)>((limit, k) => (limit.Name, choice => choice.Loads[k], limit.Loads))];

    public static decimal Sum(MixProblem problem, IReadOnlyList<decimal> units, Func<MixChoice, decimal> figure) =>
        problem.Choices.Select((choice, i) => figure(choice) * units[i]).Sum();

    /// <summary>However the units were found, they are held against every condition of the problem before anyone sees them.</summary>
    public static void Verify(MixProblem problem, IReadOnlyList<decimal> units)
    {
        foreach (var (choice, made) in problem.Choices.Zip(units))
            if (made != decimal.Truncate(made) || made < choice.Minimum || made > choice.Maximum)
                throw new InvalidOperationException($"A best mix of {made} pieces is outside {choice.Minimum} to {choice.Maximum}.");
        foreach (var (name, takes, available) in Limits(problem))
            if (!available.Reaches(Sum(problem, units, takes)))
                throw new InvalidOperationException($"A best mix breaks the limit of {name}.");
        if (problem.Goal == MixGoal.FewestHours && !Contribution(problem, units).Reaches(problem.Pool))
            throw new InvalidOperationException("A best mix does not carry the pool.");
    }
}
