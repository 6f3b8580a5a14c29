using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>What one more hour or load is worth to the best mix: the optimum solved again, less the optimum.</summary>
internal readonly struct OneMoreFormulas<T> where T : IFigure<T>
{
    /// <param name="goal">What is optimised.</param>
    /// <param name="optimum">The contribution or the hours of the best mix.</param>
    /// <param name="solvedAgain">The same with one more.</param>
    /// <param name="number">The number of the constraint, 1 first.</param>
    public OneMoreFormulas(MixGoal goal, decimal optimum, decimal solvedAgain, int number)
    {
        SolvedAgain = T.Named("withOneMore", number, solvedAgain);
        Worth = T.Named("worthOfOneMore", number,
            goal == MixGoal.MaximumSurplus ? SolvedAgain - T.Named("contribution", optimum) : T.Named("planHours", optimum) - SolvedAgain);
    }

    public T SolvedAgain { get; }

    public T Worth { get; }
}
