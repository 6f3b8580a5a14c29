namespace PriceFloor.Evidence.Shelves;

/// <summary>
/// The pieces of a design by the day on which they were made, and by place. Of those without a number the first made is the first gone, wherever it
/// lies, so places are only counted.
/// </summary>
internal sealed class ShelfStock
{
    private const string Studio = "";

    private readonly SortedDictionary<DateOnly, int> _byDay = [];
    private readonly Dictionary<string, DateOnly> _byPiece = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _byPlace = new(StringComparer.Ordinal);

    public int All { get; private set; }

    public int At(string? place) => _byPlace.GetValueOrDefault(place ?? Studio);

    public IEnumerable<(string? Channel, int Pieces)> Places => _byPlace.Where(place => place.Value > 0)
        .OrderBy(place => place.Key, StringComparer.Ordinal).Select(place => (place.Key == Studio ? null : place.Key, place.Value));

    public IEnumerable<ShelfLot> ByDayMade =>
        [.. _byDay.Select(lot => new ShelfLot(lot.Key, lot.Value)), .. _byPiece.Values.Select(day => new ShelfLot(day, 1))];

    public void Add(DateOnly made, int pieces, string? place, string? piece)
    {
        if (pieces == 0)
            return;
        _byPlace[place ?? Studio] = checked(At(place) + pieces);
        All = checked(All + pieces);
        if (piece is null || pieces > 1 || !_byPiece.TryAdd(piece, made))
            _byDay[made] = checked(_byDay.GetValueOrDefault(made) + pieces);
    }

    /// <summary>As many as are there.</summary>
    public void Move(string? from, string? to, int pieces)
    {
        var moved = int.Min(pieces, At(from));
        _byPlace[from ?? Studio] = At(from) - moved;
        _byPlace[to ?? Studio] = At(to) + moved;
    }

    /// <summary>Takes pieces from a place first and the rest from the studio; no more than are there.</summary>
    public IReadOnlyList<ShelfLot> Remove(int pieces, string? place, string? piece)
    {
        var there = int.Min(pieces, At(place));
        var rest = place is null ? 0 : int.Min(pieces - there, At(null));
        _byPlace[place ?? Studio] = At(place) - there;
        _byPlace[Studio] = At(null) - rest;
        All -= there + rest;
        return Oldest(there + rest, piece);
    }

    /// <summary>Takes pieces from one place.</summary>
    public IReadOnlyList<ShelfLot> RemoveAt(string? place, int pieces)
    {
        var there = int.Min(pieces, At(place));
        _byPlace[place ?? Studio] = At(place) - there;
        All -= there;
        return Oldest(there, null);
    }

    private List<ShelfLot> Oldest(int pieces, string? piece)
    {
        var lots = new List<ShelfLot>();
        if (pieces > 0 && piece is not null && _byPiece.Remove(piece, out var made))
        {
            lots.Add(new ShelfLot(made, 1));
            pieces--;
        }

        while (pieces > 0 && _byDay.Count > 0)
        {
            var (day, there) = _byDay.First();
            var taken = int.Min(pieces, there);
            if (taken == there)
                _byDay.Remove(day);
            else
                _byDay[day] = there - taken;
            lots.Add(new ShelfLot(day, taken));
            pieces -= taken;
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
