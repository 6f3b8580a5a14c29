namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// A part of all mixes: so many units of each choice are decided, and up to so many more of it are open. Which conditions are tight and
/// which choices are split between none and all is remembered from the relaxation of the part that it was cut from.
/// </summary>
internal sealed class MixNode
{
    private readonly MixProgramme _programme;

    public MixNode(MixProgramme programme)
    {
        _programme = programme;
        Decided = new decimal[programme.Count];
        Open = new decimal[programme.Count];
        Room = [.. programme.Rows.Select(row => row.Room)];
        AtTop = [.. programme.Gains.Select(gain => gain > 0)];
        Tight = [];
        Split = [];
        for (var i = 0; i < programme.Count; i++)
            Narrow(i, programme.Least[i], programme.Most[i]);
    }

    private MixNode(MixNode from)
    {
        _programme = from._programme;
        Decided = [.. from.Decided];
        Open = [.. from.Open];
        Room = [.. from.Room];
        AtTop = [.. from.AtTop];
        (Tight, Split, Gain, Bound) = (from.Tight, from.Split, from.Gain, from.Bound);
    }

    public decimal[] Decided { get; }

    public decimal[] Open { get; }

    /// <summary>What the decided units leave of each row.</summary>
    public decimal[] Room { get; }

    /// <summary>What the decided units gain.</summary>
    public decimal Gain { get; private set; }

    /// <summary>What no mix of this part can gain more than, as far as is known; null before it was ever looked at.</summary>
    public decimal? Bound { get; set; }

    public bool[] AtTop { get; }

    public int[] Tight { get; set; }

    public int[] Split { get; set; }

    /// <summary>The part in which a choice has at least so many and at most so many of its open units.</summary>
    public MixNode Between(int choice, decimal least, decimal most)
    {
        var part = new MixNode(this);
        part.Narrow(choice, least, most);
        return part;
    }

    /// <summary>Leaves out what is known to hold nothing of interest.</summary>
    public void Narrow(int choice, decimal least, decimal most)
    {
        Open[choice] = most - least;
        if (least == 0)
            return;
        Decided[choice] += least;
        Gain += least * _programme.Gains[choice];
        for (var r = 0; r < Room.Length; r++)
            Room[r] -= least * _programme.Rows[r].Takes[choice];
    }
}
