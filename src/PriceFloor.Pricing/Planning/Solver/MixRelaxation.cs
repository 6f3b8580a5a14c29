using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// The programme of one part of all mixes with broken pieces allowed. What matters is the bound: for any worths y &gt;= 0 of the rows
/// no mix gains more than sum(y * room) + sum(max(0, gain - y * takes) * open), because what it takes is at most the room. So dust, or
/// stopping early, can make the bound looser but never wrong. The worths are found by the dual simplex method: it starts with every
/// choice at none or all, whichever gains, and raises the worth of a broken row until the choices that no longer pay for it have mended it.
/// One row of 10 hours and gains of 30 for 4 hours and 20 for 4 hours, up to 2 each: an hour is worth 5, the bound is 10 * 5 + 2 * (30 - 20) = 70.
/// </summary>
internal sealed class MixRelaxation(MixProgramme programme, long mostEffort)
{
    /// <summary>Dust, as large as it may become in the sums of a year.</summary>
    private const decimal Tiny = 0.000000000000001m;

    private readonly MixRow[] _rows = programme.Rows;
    private readonly decimal[] _gains = programme.Gains;
    private readonly MixTurns _turns = new(programme);
    private readonly int[] _open = new int[programme.Count];
    private int _opens;
    private MixBasis _basis = new([], [], programme);

    /// <summary>No mix of the part gains more.</summary>
    public decimal Bound { get; private set; }

    /// <summary>The bound that follows from the worths and margins as they stand; that of a wider part may be tighter, but knows other margins.</summary>
    public decimal BoundAtWorths { get; private set; }

    /// <summary>What one more unit of each choice gains when it must pay for what it takes.</summary>
    public decimal[] Margins { get; } = new decimal[programme.Count];

    /// <summary>The open units of the best mix with broken pieces.</summary>
    public decimal[] Units { get; } = new decimal[programme.Count];

    /// <summary>Whether such a mix was found; otherwise only the bound means anything.</summary>
    public bool Solved { get; private set; }

    /// <summary>How much arithmetic was done so far, in multiplications or so: the same on every machine.</summary>
    public long Effort { get; private set; }

    /// <summary>Choices of the part that still have a choice, or are split.</summary>
    public ReadOnlySpan<int> Open => _open.AsSpan(0, _opens);

    /// <summary>False where the part holds no mix that gains at least as much as is needed.</summary>
    public bool MayReach(MixNode node, decimal? needed)
    {
        Solved = false;
        _basis = new MixBasis(node.Tight, node.Split, programme);
        ListOpen(node);
        for (var steps = 20 + 4 * (_rows.Length + _opens); steps > 0; steps--)
        {
            if (!Price(node))
                continue;
            Bound = node.Bound < BoundAtWorths ? node.Bound.Value : BoundAtWorths;
            if (needed is { } least && !Bound.Reaches(least))
                return false;
            Place(node);
            var (row, split, by) = Broken(node);
            Solved = by == 0;
            if (Solved)
                break;
            if (!Mend(node, row, split, by))
                return false;
            if (Effort > mostEffort)
                break;
        }

        (node.Tight, node.Split, node.Bound) = (_basis.Tight, _basis.Split, Bound);
        return true;
    }

    private void ListOpen(MixNode node)
    {
        Effort += programme.Count / 2;
        _opens = 0;
        Array.Clear(Units);
        for (var i = 0; i < programme.Count; i++)
            if (node.Open[i] > 0 || Array.IndexOf(node.Split, i) >= 0)
                _open[_opens++] = i;
    }

    /// <summary>The worths that leave the split choices no margin, every margin, and the bound.</summary>
    private bool Price(MixNode node)
    {
        var size = _basis.Tight.Length;
        if (!_basis.Invert())
        {
            _basis = new MixBasis([], [], programme);
            return false;
        }

        _basis.FindWorths();
        var bound = node.Gain;
        for (var t = 0; t < size; t++)
            bound += _basis.Worths[t] * node.Room[_basis.Tight[t]];
        foreach (var i in Open)
        {
            Margins[i] = _gains[i] - _basis.Cost(i);
            if (Margins[i] > 0)
                bound += Margins[i] * node.Open[i];
            if (decimal.Abs(Margins[i]) > Tiny)
                node.AtTop[i] = Margins[i] > 0;
        }

        BoundAtWorths = bound;
        Effort += 80 + _opens * (1L + size) + 2L * size * size * size;
        return true;
    }

    /// <summary>All of what gains, none of what does not, and of the split choices what fills the tight rows.</summary>
    private void Place(MixNode node)
    {
        foreach (var i in Open)
            Units[i] = node.AtTop[i] ? node.Open[i] : 0;
        foreach (var i in _basis.Split)
            Units[i] = 0;
        var rest = Array.ConvertAll(_basis.Tight, row => node.Room[row] - Taken(row));
        _basis.Fill(rest, Units);
    }

    private decimal Taken(int row)
    {
        var takes = _rows[row].Takes;
        var sum = 0m;
        foreach (var i in Open)
            if (Units[i] != 0 && takes[i] != 0)
                sum += takes[i] * Units[i];
        Effort += _opens;
        return sum;
    }

    /// <summary>The split choice that is furthest outside its range, or else the row that is broken by most pieces.</summary>
    private (int Row, int Split, decimal By) Broken(MixNode node)
    {
        var worst = (Row: -1, Split: -1, By: 0m);
        for (var s = 0; s < _basis.Split.Length; s++)
        {
            var i = _basis.Split[s];
            var by = Units[i] < 0 ? Units[i] : decimal.Max(0, Units[i] - node.Open[i]);
            if (decimal.Abs(by) > Tiny && decimal.Abs(by) > decimal.Abs(worst.By))
                worst = (-1, s, by);
        }

        if (worst.By != 0)
            return worst;
        for (var r = 0; r < _rows.Length; r++)
            if (Array.IndexOf(_basis.Tight, r) < 0 && Taken(r) - node.Room[r] is var by && by > Tiny && by > worst.By)
                worst = (r, -1, by);
        return worst;
    }

    /// <summary>
    /// Turns the worths in the direction that mends what is broken. On the way each choice whose margin turns changes between none and all,
    /// which mends a part; the one that mends the rest becomes split, unless a worth falls to 0 before. False where nothing mends it.
    /// </summary>
    private bool Mend(MixNode node, int row, int split, decimal by)
    {
        Effort += _opens * (4L + _basis.Tight.Length);
        var falls = row >= 0 ? _basis.FallOfWorths(_rows[row].Takes) : _basis.FallOfWorths(split, by > 0);
        var left = decimal.Abs(by);
        foreach (var (_, choice, slack) in _turns.Of(node, _basis, Open, Margins, row, falls))
        {
            if (choice >= 0)
            {
                left -= decimal.Abs(_turns.Fall(choice, _basis, row, falls)) * node.Open[choice];
                if (left > 0)
                {
                    node.AtTop[choice] = !node.AtTop[choice];
                    continue;
                }
            }

            if (split >= 0)
                node.AtTop[_basis.Split[split]] = by > 0;
            _basis = _basis.Exchanged(split, choice, slack, row);
            return true;
        }

        if (left > MixProgramme.LastDecimal)
            return false;
        _basis = new MixBasis([], [], programme);
        return true;
    }
}
