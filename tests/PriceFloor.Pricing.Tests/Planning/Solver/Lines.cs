namespace PriceFloor.Pricing.Tests.Planning.Solver;

/// <summary>Short ways to write a mix problem down.</summary>
public static class Lines
{
    public static Activity Line(decimal contribution, decimal hours, decimal? most = null, decimal least = 0, params decimal[] loads) =>
        new(contribution, hours, loads, least, most);

    public static ProductMixProblem Most(decimal hours, params Activity[] lines) => new(lines, 0, hours, [], MixGoal.MaximumSurplus);

    public static ProductMixProblem Fewest(decimal required, decimal hours, params Activity[] lines) =>
        new(lines, required, hours, [], MixGoal.FewestHours);

    public static ProductMixProblem Within(this ProductMixProblem problem, params decimal[] limits) =>
        problem with { Resources = [.. limits.Select((loads, k) => new Resource(k == 0 ? "kiln" : "lathe", loads))] };
}
