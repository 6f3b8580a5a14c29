using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// A bounded integer programme: maximise the objective subject to the constraints and the bounds of the variables; of several optima, the one
/// with the largest secondary objective. Maximise 3x + 5y subject to x &lt;= 4, 2y &lt;= 12 and 3x + 2y &lt;= 18: x = 2, y = 6, objective 36.
/// </summary>
internal sealed class IntegerProgramme(
    decimal[] objective, decimal[] secondary, Constraint[] constraints, decimal[] lowerBounds, decimal[] upperBounds)
{
    /// <summary>Figures that differ by less are equal.</summary>
    public const decimal Tolerance = 0.000000000001m;

    /// <summary>Coefficients of the objective.</summary>
    public decimal[] Objective => objective;

    /// <summary>Coefficients of the secondary objective.</summary>
    public decimal[] Secondary => secondary;

    public Constraint[] Constraints => constraints;

    public decimal[] LowerBounds => lowerBounds;

    public decimal[] UpperBounds => upperBounds;

    /// <summary>Number of variables.</summary>
    public int Count => objective.Length;

    /// <summary>The least by which two different objective values can differ, less the tolerance.</summary>
    public decimal ObjectiveStep { get; } = decimal.Max(Tolerance, CommonDivisor.Of(objective) - Tolerance ?? 0);

    public bool IsFeasible(decimal[] units) =>
        Array.TrueForAll(constraints, constraint => constraint.Holds(Sum(constraint.Coefficients, units)));

    /// <summary>The same constraints with another objective and other bounds.</summary>
    public IntegerProgramme With(decimal[] newObjective, decimal[] newLowerBounds, decimal[] newUpperBounds) =>
        new(newObjective, newObjective, constraints, newLowerBounds, newUpperBounds);

    public static decimal Sum(decimal[] coefficients, decimal[] units)
    {
        var sum = 0m;
        for (var i = 0; i < units.Length; i++)
            if (units[i] != 0 && coefficients[i] != 0)
                sum += coefficients[i] * units[i];
        return sum;
    }

    /// <summary>The integer part of a figure that is 0 or more; 2.9999999999999999 is 3.</summary>
    public static decimal Floor(decimal value) => decimal.Truncate(Rounding.Settle(value));
}
