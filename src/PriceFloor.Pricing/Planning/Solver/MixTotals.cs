using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>Something of which the year has only so much, what one piece of a choice takes of it, and how it is called.</summary>
internal sealed record MixTaking(string Name, string InWords, Func<MixChoice, decimal> Takes, decimal Available);

/// <summary>What the units of a mix come to, straight from the problem.</summary>
internal static class MixTotals
{
    public static decimal Contribution(MixProblem problem, IReadOnlyList<decimal> units) => Sum(problem, units, choice => choice.Contribution);

    public static decimal Hours(MixProblem problem, IReadOnlyList<decimal> units) => Sum(problem, units, choice => choice.Hours);

    /// <summary>The hours first, then each limit in its order.</summary>
    public static IReadOnlyList<MixTaking> Limits(MixProblem problem) =>
        [new("hours", "bench hours", choice => choice.Hours, problem.Hours), .. problem.Limits.Select((limit, k) => new MixTaking(limit.Name, $"loads of \"{limit.Name}\"", choice => choice.Loads[k], limit.Loads))];

    public static decimal Sum(MixProblem problem, IReadOnlyList<decimal> units, Func<MixChoice, decimal> figure) =>
        problem.Choices.Select((choice, i) => figure(choice) * units[i]).Sum();

    /// <summary>However the units were found, they are held against every condition of the problem before anyone sees them.</summary>
    public static void Verify(MixProblem problem, IReadOnlyList<decimal> units)
    {
        foreach (var (choice, made) in problem.Choices.Zip(units))
            if (made != decimal.Truncate(made) || made < choice.Minimum || made > choice.Maximum)
                throw new InvalidOperationException($"A best mix of {made} pieces is outside {choice.Minimum} to {choice.Maximum}.");
        foreach (var limit in Limits(problem))
            if (!limit.Available.Reaches(Sum(problem, units, limit.Takes)))
                throw new InvalidOperationException($"A best mix takes more {limit.InWords} than there are.");
        if (problem.Goal == MixGoal.FewestHours && !Contribution(problem, units).Reaches(problem.Pool))
            throw new InvalidOperationException("A best mix does not carry the pool.");
    }
}
