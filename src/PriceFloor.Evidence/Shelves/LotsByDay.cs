namespace PriceFloor.Evidence.Shelves;

/// <summary>Pieces by the day on which they were made. Nearly always the newest come and the oldest go.</summary>
internal sealed class LotsByDay
{
    private readonly List<ShelfLot> _lots = [];
    private int _gone;

    public bool IsEmpty => _gone == _lots.Count;

    /// <summary>The oldest of them; there is one.</summary>
    public ShelfLot Oldest => _lots[_gone];

    /// <summary>All of them, oldest first.</summary>
    public List<ShelfLot> All => _lots[_gone..];

    public void Add(DateOnly made, int pieces)
    {
        var at = _lots.Count;
        while (at > _gone && _lots[at - 1].Made > made)
            at--;
        if (at > _gone && _lots[at - 1].Made == made)
            _lots[at - 1] = new ShelfLot(made, checked(_lots[at - 1].Pieces + pieces));
        else
            _lots.Insert(at, new ShelfLot(made, pieces));
    }

    /// <summary>Takes pieces of the oldest lot: no more than it has.</summary>
    public ShelfLot Take(int most)
    {
        var (made, pieces) = Oldest;
        var taken = int.Min(most, pieces);
        if (taken < pieces)
            _lots[_gone] = new ShelfLot(made, pieces - taken);
        else if (++_gone > _lots.Count / 2)
            Forget();
        return new ShelfLot(made, taken);
    }

    private void Forget()
    {
        _lots.RemoveRange(0, _gone);
        _gone = 0;
    }
}
