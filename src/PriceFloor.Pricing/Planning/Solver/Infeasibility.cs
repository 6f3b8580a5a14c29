using System.Globalization;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>Why a product mix problem has no feasible solution, in words.</summary>
internal static class Infeasibility
{
    private const int Decimals = 4;

    /// <summary>Every constraint that the minimum units alone violate; null if they satisfy all.</summary>
    public static Fault? OfTheMinimums(ProductMixProblem problem)
    {
        if (problem.Activities.FirstOrDefault(activity => activity.Minimum > activity.Maximum) is { } upsideDown)
            return new Fault("", FaultCodes.Infeasible,
                $"At least {Text(upsideDown.Minimum)} pieces of a line are asked for where at most {Text(upsideDown.Maximum!.Value)} are allowed.");
        var least = problem.Activities.Select(activity => activity.Minimum).ToList();
        var violated = Evaluation.Constraints(problem)
            .Select(constraint => (Constraint: constraint, Needed: Evaluation.Sum(problem, least, constraint.Coefficient)))
            .Where(one => !one.Constraint.Available.Reaches(one.Needed))
            .Select(one => $"{AtLeast(one.Needed)} {one.Constraint.InWords} where there are {Text(one.Constraint.Available)}")
            .ToList();
        return violated.Count == 0 ? null
            : new Fault("", FaultCodes.Infeasible,
                $"The least that is to be made does not fit: it takes {Listed(violated)}. Lower a minimum, or find more of what is short.");
    }

    /// <summary>No mix was found that brings the required contribution: by how much the best falls short, and which constraints bind it.</summary>
    public static Outcome<BestMix> OfTheRequirement(ProductMixProblem problem, long effort)
    {
        var most = BestMix.Of(problem with { Goal = MixGoal.MaximumSurplus }, effort).Value;
        var atMost = most.AtMost ?? most.Contribution;
        if (!most.Proven && atMost.Reaches(problem.RequiredContribution))
            return new Fault("", FaultCodes.Undecided, "No mix that brings what bench time must recover was found before the search gave up, "
                + "and none was shown to be impossible; ask for the largest surplus, or leave out some lines.");
        var binding = Evaluation.Constraints(problem).Zip(most.Uses).Where(one => one.Second.Binds).Select(one => one.First.InWords).ToList();
        var because = binding.Count == 0
            ? "Every line that leaves something is already made as often as its market takes it"
            : $"What is short: {Listed(binding)}";
        return new Fault("", FaultCodes.Infeasible, $"No mix brings the {AtLeast(problem.RequiredContribution)} that bench time must recover: "
            + $"the most that any leaves is {Text(Rounding.Trim(Rounding.Down(atMost, Decimals)))}, "
            + $"which is {AtLeast(problem.RequiredContribution - atMost)} too little. {because}.");
    }

    private static string AtLeast(decimal needed) => Text(Rounding.Trim(Rounding.Up(needed, Decimals)));

    private static string Listed(List<string> parts) => parts.Count == 1 ? parts[0] : $"{string.Join(", ", parts[..^1])} and {parts[^1]}";

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);
}
