namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// A basis of the relaxation: the tight constraints, those without slack, and as many basic variables; every other variable is nonbasic, at one
/// of its bounds. With one tight constraint of hours and one basic variable, the dual price of an hour is that variable's objective per hour.
/// </summary>
internal sealed class Basis(int[] tight, int[] basic, IntegerProgramme programme)
{
    private const decimal SmallestPivot = 0.000000000001m;
    private readonly decimal[,] _inverse = new decimal[tight.Length, tight.Length];

    /// <summary>Constraints whose slack is nonbasic, at 0.</summary>
    public int[] Tight => tight;

    /// <summary>Variables that may be strictly between their bounds.</summary>
    public int[] Basic => basic;

    /// <summary>What one more unit of each tight constraint's right-hand side would add to the objective; negative rounding errors are 0.</summary>
    public decimal[] DualPrices { get; } = new decimal[tight.Length];

    /// <summary>Inverts the basis matrix by Gauss-Jordan elimination with partial pivoting; false if it is singular.</summary>
    public bool Invert()
    {
        var size = tight.Length;
        var matrix = new decimal[size, size];
        for (var t = 0; t < size; t++)
        {
            for (var s = 0; s < size; s++)
                matrix[t, s] = programme.Constraints[tight[t]].Coefficients[basic[s]];
            _inverse[t, t] = 1;
        }

        for (var column = 0; column < size; column++)
        {
            var pivot = column;
            for (var t = column + 1; t < size; t++)
                if (decimal.Abs(matrix[t, column]) > decimal.Abs(matrix[pivot, column]))
                    pivot = t;
            if (decimal.Abs(matrix[pivot, column]) < SmallestPivot)
                return false;
            SwapRows(matrix, pivot, column);
            SwapRows(_inverse, pivot, column);
            Eliminate(matrix, column);
        }

        return true;
    }

    /// <summary>The dual prices at which every basic variable has a reduced cost of 0.</summary>
    public void FindDualPrices()
    {
        for (var t = 0; t < tight.Length; t++)
        {
            var price = 0m;
            for (var s = 0; s < basic.Length; s++)
                price += programme.Objective[basic[s]] * _inverse[s, t];
            DualPrices[t] = decimal.Max(0, price);
        }
    }

    /// <summary>What one unit of a variable takes of the tight constraints, valued at the dual prices.</summary>
    public decimal ImputedCost(int variable)
    {
        var cost = 0m;
        for (var t = 0; t < tight.Length; t++)
            cost += DualPrices[t] * programme.Constraints[tight[t]].Coefficients[variable];
        return cost;
    }

    /// <summary>Gives the basic variables the values that use up the remaining right-hand sides of the tight constraints.</summary>
    public void SolveForBasic(decimal[] remaining, decimal[] units)
    {
        for (var s = 0; s < basic.Length; s++)
            for (var t = 0; t < tight.Length; t++)
                units[basic[s]] += _inverse[s, t] * remaining[t];
    }

    /// <summary>
    /// The rates at which the dual prices fall as the dual price of another constraint rises and the reduced costs of the basic variables stay 0.
    /// </summary>
    public decimal[] DualRates(decimal[] coefficients)
    {
        var rates = new decimal[tight.Length];
        for (var t = 0; t < tight.Length; t++)
            for (var s = 0; s < basic.Length; s++)
                rates[t] += coefficients[basic[s]] * _inverse[s, t];
        return rates;
    }

    /// <summary>The rates at which the dual prices fall as the reduced cost of one basic variable rises, or falls, and the others' stay 0.</summary>
    public decimal[] DualRates(int leaving, bool rises)
    {
        var rates = new decimal[tight.Length];
        for (var t = 0; t < tight.Length; t++)
            rates[t] = rises ? _inverse[leaving, t] : -_inverse[leaving, t];
        return rates;
    }

    /// <summary>
    /// The next basis: a variable enters for the basic one at a position, a violated constraint becomes tight for the one at a position, or both
    /// leave or both enter. -1 means none.
    /// </summary>
    public Basis Pivoted(int leavingBasic, int enteringVariable, int leavingTight, int enteringConstraint)
    {
        List<int> variables = [.. basic], constraints = [.. tight];
        if (leavingBasic >= 0)
            variables.RemoveAt(leavingBasic);
        if (enteringVariable >= 0)
            variables.Add(enteringVariable);
        if (leavingTight >= 0)
            constraints.RemoveAt(leavingTight);
        if (enteringConstraint >= 0)
            constraints.Add(enteringConstraint);
        return new Basis([.. constraints], [.. variables], programme);
    }

    private static void SwapRows(decimal[,] matrix, int one, int other)
    {
        for (var s = 0; one != other && s < matrix.GetLength(1); s++)
            (matrix[one, s], matrix[other, s]) = (matrix[other, s], matrix[one, s]);
    }

    private void Eliminate(decimal[,] matrix, int column)
    {
        var pivot = matrix[column, column];
        for (var s = 0; s < basic.Length; s++)
            (matrix[column, s], _inverse[column, s]) = (matrix[column, s] / pivot, _inverse[column, s] / pivot);
        for (var t = 0; t < tight.Length; t++)
        {
            var factor = matrix[t, column];
            for (var s = 0; t != column && factor != 0 && s < basic.Length; s++)
            {
                matrix[t, s] -= factor * matrix[column, s];
                _inverse[t, s] -= factor * _inverse[column, s];
            }
        }
    }
}
