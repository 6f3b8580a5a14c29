namespace PriceFloor.Evidence.Shelves;

/// <summary>
/// The pieces of a design by the day on which they were made, and by place. Of those without a number the first made is the first gone, wherever it
/// lies, so places are only counted.
/// </summary>
internal sealed class ShelfStock
{
    private readonly LotsByDay _byDay = new();
    private readonly List<ShelfLot> _taken = [];
    private readonly Dictionary<string, DateOnly> _byPiece = new(StringComparer.Ordinal);
    private readonly ShelfPlace _studio = new(null);
    private readonly Dictionary<string, ShelfPlace> _channels = new(StringComparer.Ordinal);

    public int All { get; private set; }

    /// <summary>How many are at a channel; in the studio for null.</summary>
    public int At(string? place) => Find(place)?.Pieces ?? 0;

    /// <summary>The days up to a last one on which a piece was at a place, in order; null where none ever was.</summary>
    public IReadOnlyList<DaySpan>? DaysAt(string? place, DateOnly to) => Find(place)?.DaysUpTo(to);

    /// <summary>The places with pieces, the studio first, then channels by key.</summary>
    public IEnumerable<ShelfPlace> Places =>
        _channels.Values.OrderBy(place => place.Channel, StringComparer.Ordinal).Prepend(_studio).Where(place => place.Pieces > 0);

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
        var there = Place(place);
        there.Pieces = checked(there.Pieces + pieces);
        All = checked(All + pieces);
        if (piece is null || pieces > 1 || !_byPiece.TryAdd(piece, made))
            _byDay.Add(made, pieces);
    }

    /// <summary>As many as are there.</summary>
    public void Move(string? from, string? to, int pieces)
    {
        var moved = Take(Place(from), pieces);
        Place(to).Pieces += moved;
    }

    /// <summary>
    /// Takes pieces from a place first and the rest from the studio; no more than are there. The list is good until pieces are taken again.
    /// </summary>
    public List<ShelfLot> Remove(int pieces, string? place, string? piece)
    {
        var there = Take(Place(place), pieces);
        return Oldest(there + Take(_studio, pieces - there), piece);
    }

    /// <summary>Takes pieces from one place.</summary>
    public List<ShelfLot> RemoveAt(string? place, int pieces) => Oldest(Take(Place(place), pieces), null);

    /// <summary>Notes how things stand on a day, after what happened at a place; any may have taken the studio's pieces.</summary>
    public void Note(DateOnly day, string? place)
    {
        _studio.Note(day);
        if (place is not null)
            Place(place).Note(day);
    }

    private ShelfPlace? Find(string? place) => place is null ? _studio : _channels.GetValueOrDefault(place);

    private ShelfPlace Place(string? place)
    {
        if (Find(place) is { } known)
            return known;
        var there = new ShelfPlace(place);
        _channels.Add(place!, there);
        return there;
    }

    /// <summary>Takes no more than are there, and returns how many that is.</summary>
    private static int Take(ShelfPlace place, int pieces)
    {
        var taken = int.Min(pieces, place.Pieces);
        place.Pieces -= taken;
        return taken;
    }

    private List<ShelfLot> Oldest(int pieces, string? piece)
    {
        All -= pieces;
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
