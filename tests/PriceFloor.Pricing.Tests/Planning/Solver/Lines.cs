namespace PriceFloor.Pricing.Tests.Planning.Solver;

/// <summary>Short ways to write a mix problem down.</summary>
public static class Lines
{
    public static MixChoice Line(decimal contribution, decimal hours, decimal? most = null, decimal least = 0, params decimal[] loads) => new(contribution, hours, loads, least, most);

    public static MixProblem Most(decimal hours, params MixChoice[] lines) => new(lines, 0, hours, [], MixGoal.MaximumSurplus);

    public static MixProblem Fewest(decimal pool, decimal hours, params MixChoice[] lines) => new(lines, pool, hours, [], MixGoal.FewestHours);

    public static MixProblem Within(this MixProblem problem, params decimal[] limits) =>
        problem with { Limits = [.. limits.Select((loads, k) => new MixLimit(k == 0 ? "kiln" : "lathe", loads))] };
}
