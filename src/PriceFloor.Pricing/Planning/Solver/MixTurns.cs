namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>Where margins and worths come to 0 while the worths of a relaxation are turned in one direction.</summary>
internal sealed class MixTurns(MixProgramme programme)
{
    /// <summary>Falls that are no more than the dust of an inverse.</summary>
    private const decimal Dust = 0.00000000000000000001m;

    private readonly List<(decimal At, int Choice, int Tight)> _turns = [];

    /// <summary>The nearest first: a choice whose margin turns there, or the place of a tight row whose worth does; the other is -1.</summary>
    public IReadOnlyList<(decimal At, int Choice, int Tight)> Of(MixNode node, MixBasis basis, ReadOnlySpan<int> open, decimal[] margins, int row, decimal[] falls)
    {
        _turns.Clear();
        for (var t = 0; t < falls.Length; t++)
            if (falls[t] > Dust)
                _turns.Add((basis.Worths[t] / falls[t], -1, t));
        foreach (var i in open)
        {
            if (node.Open[i] == 0 || Array.IndexOf(basis.Split, i) >= 0)
                continue;
            var fall = Fall(i, basis, row, falls);
            if (node.AtTop[i] && fall > Dust)
                _turns.Add((decimal.Max(0, margins[i]) / fall, i, -1));
            else if (!node.AtTop[i] && fall < -Dust)
                _turns.Add((decimal.Min(0, margins[i]) / fall, i, -1));
        }

        _turns.Sort();
        return _turns;
    }

    /// <summary>By how much the margin of a choice falls for each step on the way.</summary>
    public decimal Fall(int choice, MixBasis basis, int row, decimal[] falls)
    {
        var fall = row >= 0 ? programme.Rows[row].Takes[choice] : 0;
        for (var t = 0; t < falls.Length; t++)
            fall -= falls[t] * programme.Rows[basis.Tight[t]].Takes[choice];
        return fall;
    }
}
