namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// The tight rows of a relaxation and as many choices that are split between none and all: what is solved for, everything else standing
/// at a bound. With one tight row of hours and one split choice, an hour is worth what that choice gains an hour.
/// </summary>
internal sealed class MixBasis(int[] tight, int[] split, MixProgramme programme)
{
    private const decimal Negligible = 0.000000000001m;
    private readonly decimal[,] _inverse = new decimal[tight.Length, tight.Length];

    public int[] Tight => tight;

    public int[] Split => split;

    /// <summary>What one more of each tight row would gain; dust below 0 is 0.</summary>
    public decimal[] Worths { get; } = new decimal[tight.Length];

    /// <summary>Gauss and Jordan's way, with the largest pivot; false where the split choices cannot tell the tight rows apart.</summary>
    public bool Invert()
    {
        var size = tight.Length;
        var matrix = new decimal[size, size];
        for (var t = 0; t < size; t++)
        {
            for (var s = 0; s < size; s++)
                matrix[t, s] = programme.Rows[tight[t]].Takes[split[s]];
            _inverse[t, t] = 1;
        }

        for (var column = 0; column < size; column++)
        {
            var pivot = column;
            for (var t = column + 1; t < size; t++)
                if (decimal.Abs(matrix[t, column]) > decimal.Abs(matrix[pivot, column]))
                    pivot = t;
            if (decimal.Abs(matrix[pivot, column]) < Negligible)
                return false;
            Swap(matrix, pivot, column);
            Swap(_inverse, pivot, column);
            Clear(matrix, column);
        }

        return true;
    }

    /// <summary>The worths at which no split choice has a margin.</summary>
    public void FindWorths()
    {
        for (var t = 0; t < tight.Length; t++)
        {
            var worth = 0m;
            for (var s = 0; s < split.Length; s++)
                worth += programme.Gains[split[s]] * _inverse[s, t];
            Worths[t] = decimal.Max(0, worth);
        }
    }

    /// <summary>What one unit of a choice takes, at these worths.</summary>
    public decimal Cost(int choice)
    {
        var cost = 0m;
        for (var t = 0; t < tight.Length; t++)
            cost += Worths[t] * programme.Rows[tight[t]].Takes[choice];
        return cost;
    }

    /// <summary>Gives the split choices the units that take the rest of the tight rows.</summary>
    public void Fill(decimal[] rest, decimal[] units)
    {
        for (var s = 0; s < split.Length; s++)
            for (var t = 0; t < tight.Length; t++)
                units[split[s]] += _inverse[s, t] * rest[t];
    }

    /// <summary>By how much each worth falls when another row's worth rises by 1 and the split choices stay without a margin.</summary>
    public decimal[] FallOfWorths(decimal[] takes)
    {
        var falls = new decimal[tight.Length];
        for (var t = 0; t < tight.Length; t++)
            for (var s = 0; s < split.Length; s++)
                falls[t] += takes[split[s]] * _inverse[s, t];
        return falls;
    }

    /// <summary>By how much each worth falls when the margin of one split choice rises by 1, or falls by 1, and the others' stay 0.</summary>
    public decimal[] FallOfWorths(int one, bool rises)
    {
        var falls = new decimal[tight.Length];
        for (var t = 0; t < tight.Length; t++)
            falls[t] = rises ? _inverse[one, t] : -_inverse[one, t];
        return falls;
    }

    /// <summary>
    /// The next basis: the split choice at one place gives way to another, a tight row to the row that was broken, or both leave or both
    /// join. A place of -1 means none.
    /// </summary>
    public MixBasis Exchanged(int splitPlace, int choice, int tightPlace, int row)
    {
        List<int> choices = [.. split], rows = [.. tight];
        if (splitPlace >= 0)
            choices.RemoveAt(splitPlace);
        if (choice >= 0)
            choices.Add(choice);
        if (tightPlace >= 0)
            rows.RemoveAt(tightPlace);
        if (row >= 0)
            rows.Add(row);
        return new MixBasis([.. rows], [.. choices], programme);
    }

    private static void Swap(decimal[,] matrix, int one, int other)
    {
        for (var s = 0; one != other && s < matrix.GetLength(1); s++)
            (matrix[one, s], matrix[other, s]) = (matrix[other, s], matrix[one, s]);
    }

    private void Clear(decimal[,] matrix, int column)
    {
        var pivot = matrix[column, column];
        for (var s = 0; s < split.Length; s++)
            (matrix[column, s], _inverse[column, s]) = (matrix[column, s] / pivot, _inverse[column, s] / pivot);
        for (var t = 0; t < tight.Length; t++)
        {
            var factor = matrix[t, column];
            for (var s = 0; t != column && factor != 0 && s < split.Length; s++)
            {
                matrix[t, s] -= factor * matrix[column, s];
                _inverse[t, s] -= factor * _inverse[column, s];
            }
        }
    }
}
