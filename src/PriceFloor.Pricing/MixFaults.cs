using System.Globalization;

namespace PriceFloor.Pricing;

/// <summary>Why there is no best mix, in words.</summary>
internal static class MixFaults
{
    private const string Infeasible = "infeasible";

    /// <summary>The limits that the minimum units alone break, all of them; null where they fit.</summary>
    public static Fault? OfTheLeast(MixProblem problem)
    {
        if (problem.Choices.FirstOrDefault(choice => choice.Minimum > choice.Maximum) is { } upsideDown)
            return new Fault("", Infeasible, $"At least {Text(upsideDown.Minimum)} pieces of a line are asked for where at most {Text(upsideDown.Maximum!.Value)} are allowed.");
        var least = problem.Choices.Select(choice => choice.Minimum).ToList();
        var broken = MixTotals.Limits(problem)
            .Select(limit => (limit.Name, limit.Available, Needed: MixTotals.Sum(problem, least, limit.Takes)))
            .Where(limit => !limit.Available.Reaches(limit.Needed))
            .Select(limit => $"{Least(limit.Needed)} {Unit(limit.Name)} where there are {Text(limit.Available)}")
            .ToList();
        return broken.Count == 0 ? null
            : new Fault("", Infeasible, $"The least that is to be made does not fit: it takes {Listed(broken)}. Lower a minimum, or find more of what is short.");
    }

    /// <summary>No mix was found that carries the pool: by how much the best falls short, and what stands in its way.</summary>
    public static Outcome<BestMix> OfThePool(MixProblem problem, MixSolver solver, long effort)
    {
        var most = BestMix.Of(problem with { Goal = MixGoal.MaximumSurplus }, effort).Value;
        var atMost = most.AtMost ?? most.Contribution;
        if (!solver.First.Proven && atMost.Reaches(problem.Pool))
            return new Fault("", "undecided", "No mix that carries the pool was found before the search gave up, and none was shown to be impossible; ask for the largest surplus, or leave out some lines.");
        var binding = most.Uses.Where(use => use.Binds).Select(use => Unit(use.Name)).ToList();
        var because = binding.Count == 0 ? "Every line that leaves something is already made as often as its market takes it" : $"What is short: {Listed(binding)}";
        return new Fault("", Infeasible, $"No mix carries the pool of {Text(problem.Pool)}: the best leaves {Text(Rounding.Trim(Rounding.Down(atMost, 4)))}, which is {Least(problem.Pool - atMost)} too little. {because}.");
    }

    private static string Unit(string name) => name == "hours" ? "bench hours" : $"loads of \"{name}\"";

    private static string Least(decimal needed) => Text(Rounding.Trim(Rounding.Up(needed, 4)));

    private static string Listed(List<string> parts) => parts.Count == 1 ? parts[0] : $"{string.Join(", ", parts[..^1])} and {parts[^1]}";

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);
}
