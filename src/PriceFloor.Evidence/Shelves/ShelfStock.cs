namespace PriceFloor.Evidence.Shelves;

/// <summary>
/// The pieces of a design by the day on which they were made, and by place. Of those without a number the first made is the first gone, wherever it
/// lies, so places are only counted.
/// </summary>
internal sealed class ShelfStock
{
    private const string Studio = "";

    private readonly LotsByDay _byDay = new();
    private readonly List<ShelfLot> _taken = [];
    private readonly Dictionary<string, DateOnly> _byPiece = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _byPlace = new(StringComparer.Ordinal);

    public int All { get; private set; }

    public int At(string? place) => _byPlace.GetValueOrDefault(place ?? Studio);

    public IEnumerable<(string? Channel, int Pieces)> Places => _byPlace.Where(place => place.Value > 0)
        .OrderBy(place => place.Key, StringComparer.Ordinal).Select(place => (place.Key == Studio ? null : place.Key, place.Value));

    public IEnumerable<ShelfLot> ByDayMade =>
        [.. _byDay.All, .. _byPiece.Values.Select(day => new ShelfLot(day, 1))];

    /// <summary>The day on which the oldest of them was made; null where there is none.</summary>
    public DateOnly? OldestMade
    {
        get
        {
            var oldest = _byDay.IsEmpty ? (DateOnly?)null : _byDay.Oldest.Made;
            foreach (var made in _byPiece.Values)
                if (!(oldest <= made))
                    oldest = made;
            return oldest;
        }
    }

    public void Add(DateOnly made, int pieces, string? place, string? piece)
    {
        if (pieces == 0)
            return;
        _byPlace[place ?? Studio] = checked(At(place) + pieces);
        All = checked(All + pieces);
        if (piece is null || pieces > 1 || !_byPiece.TryAdd(piece, made))
            _byDay.Add(made, pieces);
    }

    /// <summary>As many as are there.</summary>
    public void Move(string? from, string? to, int pieces)
    {
        var moved = int.Min(pieces, At(from));
        _byPlace[from ?? Studio] = At(from) - moved;
        _byPlace[to ?? Studio] = At(to) + moved;
    }

    /// <summary>
    /// Takes pieces from a place first and the rest from the studio; no more than are there. The list is good until pieces are taken again.
    /// </summary>
    public List<ShelfLot> Remove(int pieces, string? place, string? piece)
    {
        var there = int.Min(pieces, At(place));
        var rest = place is null ? 0 : int.Min(pieces - there, At(null));
        _byPlace[place ?? Studio] = At(place) - there;
        _byPlace[Studio] = At(null) - rest;
        All -= there + rest;
        return Oldest(there + rest, piece);
    }

    /// <summary>Takes pieces from one place.</summary>
    public List<ShelfLot> RemoveAt(string? place, int pieces)
    {
        var there = int.Min(pieces, At(place));
        _byPlace[place ?? Studio] = At(place) - there;
        All -= there;
        return Oldest(there, null);
    }

    private List<ShelfLot> Oldest(int pieces, string? piece)
    {
        var lots = _taken;
        lots.Clear();
        if (pieces > 0 && piece is not null && _byPiece.Remove(piece, out var made))
        {
            lots.Add(new ShelfLot(made, 1));
            pieces--;
        }

        while (pieces > 0 && !_byDay.IsEmpty)
        {
            lots.Add(_byDay.Take(pieces));
            pieces -= lots[^1].Pieces;
        }

        // Only pieces with numbers are left: the oldest of them.
        for (; pieces > 0 && _byPiece.Count > 0; pieces--)
        {
            var oldest = _byPiece.MinBy(one => (one.Value, one.Key));
            _byPiece.Remove(oldest.Key);
            lots.Add(new ShelfLot(oldest.Value, 1));
        }

        return lots;
    }
}
