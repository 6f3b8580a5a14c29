using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Planning.Solver;

namespace PriceFloor.Pricing.Planning;

/// <summary>What one more hour or load is worth to a <see cref="BestYear"/>: the optimum solved again, less the optimum.</summary>
internal readonly struct OneMoreFormulas<T> where T : IFigure<T>
{
    /// <param name="best">The best year.</param>
    /// <param name="worth">What solving it again has shown.</param>
    /// <param name="number">The number of the constraint, 1 first.</param>
    public OneMoreFormulas(BestYear best, decimal worth, int number)
    {
        var isMoney = best.Goal == MixGoal.MaximumSurplus;
        SolvedAgain = T.Named("withOneMore", number, isMoney ? best.Plan.Contribution + worth : best.Plan.BenchHours - worth);
        Worth = T.Named("worthOfOneMore", number,
            isMoney ? SolvedAgain - T.Named("contribution", best.Plan.Contribution) : T.Named("planHours", best.Plan.BenchHours) - SolvedAgain);
    }

    public T SolvedAgain { get; }

    public T Worth { get; }
}
