using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Shelves;

/// <summary>What became of a design's good pieces: how old each was when it went, and how many are where.</summary>
public sealed class ShelfHistory
{
    private static readonly MovementKind[] s_ofADay =
    [
        MovementKind.Made, MovementKind.Back, MovementKind.Sent, MovementKind.Sold, MovementKind.Returned, MovementKind.Given, MovementKind.Lost,
        MovementKind.Reworked, MovementKind.Counted,
    ];

    private readonly ShelfStock _stock = new();
    private readonly List<ShelfTime> _ended = [];
    private readonly List<SoldPieces> _sold = [];
    private DateOnly? _last;

    private ShelfHistory(DateOnly to) => To = to;

    /// <summary>The day of which the ages are.</summary>
    public DateOnly To { get; }

    /// <summary>Pieces made, or found by a count.</summary>
    public int Made { get; private set; }

    /// <summary>Pieces sold, less those that came back and can be sold again.</summary>
    public int Sold { get; private set; }

    /// <summary>Of these, those that no piece made before accounts for.</summary>
    public int Unmatched { get; private set; }

    /// <summary>Whether a count found another number than the lines.</summary>
    public bool Differs { get; private set; }

    /// <summary>Whether every piece that went was matched by its own number.</summary>
    public bool ByPiece { get; private set; } = true;

    /// <summary>Days on which a piece was there, of those that the lines cover.</summary>
    public int DaysInStock { get; private set; }

    public DateOnly? FirstMade { get; private set; }

    /// <summary>Pieces on hand at all places.</summary>
    public int OnHand => _stock.All;

    /// <summary>Pieces on hand at a channel; in the studio for null.</summary>
    public int OnHandAt(string? channel) => _stock.At(channel);

    /// <summary>The days on which a piece was at a channel, in the studio for null; null where none ever was.</summary>
    public IReadOnlyList<DaySpan>? DaysAt(string? channel) => _stock.DaysAt(channel, To);

    /// <summary>Whether the lines say how many there are: pieces were made, and no more were sold than that.</summary>
    public bool IsKnown => this is { Made: > 0, Unmatched: 0 };

    /// <summary>Pieces on hand by place, the studio (null) first, then channels by key.</summary>
    public IEnumerable<(string? Channel, int Pieces)> Places => _stock.Places.Select(place => (place.Channel, place.Pieces));

    /// <summary>Pieces on hand by the day on which they were made, oldest first.</summary>
    public IEnumerable<(DateOnly Made, int Pieces)> Ages => _stock.ByDayMade.GroupBy(lot => lot.Made).OrderBy(lots => lots.Key)
        .Select(lots => (lots.Key, lots.Sum(lot => lot.Pieces)));

    /// <summary>The day on which the oldest piece on hand was made; null where there is none.</summary>
    public DateOnly? OldestMade => _stock.OldestMade;

    /// <summary>Each piece that has a day on which it was made.</summary>
    public IEnumerable<ShelfTime> Times
    {
        get
        {
            var times = new List<ShelfTime>(_ended);
            foreach (var sold in _sold)
                if (sold.Pieces > 0)
                    times.Add(new ShelfTime(Age(sold.Made, sold.Line.On), ShelfEnd.Sold, sold.Pieces));
            foreach (var lot in _stock.ByDayMade)
                times.Add(new ShelfTime(Age(lot.Made, To), ShelfEnd.OnShelf, lot.Pieces));
            return times;
        }
    }

    /// <summary>
    /// The history of one design's movements; seconds are not in it. Days do not depend on the order of the lines, within a day positions do.
    /// </summary>
    /// <param name="movements">The movements of one design.</param>
    /// <param name="to">The last day; later movements do not count.</param>
    public static ShelfHistory Of(IEnumerable<Movement> movements, DateOnly to)
    {
        var history = new ShelfHistory(to);
        foreach (var line in InOrder.Of(movements.Where(line => line.Grade == Grade.Good && line.On <= to), AsTheyHappened))
        {
            history.Take(line);
            history._stock.Note(line.On, line.Channel);
        }

        history.Pass(to);
        return history;
    }

    private static int AsTheyHappened(Movement one, Movement other) => one.On != other.On ? one.On.CompareTo(other.On)
        : one.What != other.What ? Array.IndexOf(s_ofADay, one.What) - Array.IndexOf(s_ofADay, other.What) : one.Position.CompareTo(other.Position);

    /// <summary>Lets go of the pieces that are gone: how old they were is not told any more.</summary>
    internal void Release()
    {
        _ended.Clear();
        _ended.TrimExcess();
        _sold.Clear();
        _sold.TrimExcess();
    }

    private void Take(Movement line)
    {
        Pass(line.On);
        switch (line.What)
        {
            case MovementKind.Made:
                Make(line.On, line.Pieces, null, line.Piece);
                break;
            case MovementKind.Sent:
                _stock.Move(null, line.Channel, line.Pieces);
                break;
            case MovementKind.Back:
                _stock.Move(line.Channel, null, line.Pieces);
                break;
            case MovementKind.Sold:
                Sell(line);
                break;
            case MovementKind.Returned:
                Return(line);
                break;
            case MovementKind.Counted:
                Count(line);
                break;
            default:
                Lose(line, line.Pieces);
                break;
        }
    }

    private void Pass(DateOnly day)
    {
        if (_last is { } last && _stock.All > 0)
            DaysInStock += day.DayNumber - last.DayNumber;
        _last = day;
    }

    private void Make(DateOnly on, int pieces, string? place, string? piece)
    {
        _stock.Add(on, pieces, place, piece);
        Made += pieces;
        FirstMade ??= on;
    }

    private void Sell(Movement line)
    {
        ByPiece &= line.Piece is not null;
        Sold += line.Pieces;
        var matched = 0;
        foreach (var lot in _stock.Remove(line.Pieces, line.Channel, line.Piece))
        {
            _sold.Add(new SoldPieces(lot.Made, line, lot.Pieces));
            matched += lot.Pieces;
        }

        Unmatched += line.Pieces - matched;
    }

    /// <summary>
    /// What can be sold again was not sold after all, and its age goes on. What cannot stays sold: the channel's returns have its loss.
    /// </summary>
    private void Return(Movement line)
    {
        if (!line.Resale)
            return;
        Sold -= line.Pieces;
        var left = line.Pieces;
        for (var i = _sold.Count - 1; i >= 0 && left > 0; i--)
            if (line.Order is null || _sold[i].Line.Order == line.Order)
                left -= Cancel(i, left);
        for (var i = _sold.Count - 1; i >= 0 && left > 0; i--)
            left -= Cancel(i, left);
        while (_sold.Count > 0 && _sold[^1].Pieces == 0)
            _sold.RemoveAt(_sold.Count - 1);
    }

    private int Cancel(int index, int most)
    {
        var sold = _sold[index];
        var pieces = int.Min(most, sold.Pieces);
        _sold[index] = sold with { Pieces = sold.Pieces - pieces };
        if (pieces > 0)
            _stock.Add(sold.Made, pieces, null, null);
        return pieces;
    }

    private void Lose(Movement line, int pieces)
    {
        foreach (var lot in _stock.Remove(pieces, line.Channel, line.Piece))
            _ended.Add(new ShelfTime(Age(lot.Made, line.On), ShelfEnd.Gone, lot.Pieces));
    }

    private void Count(Movement line)
    {
        var found = line.Pieces - _stock.At(line.Channel);
        Differs |= found != 0;
        if (found > 0)
            Make(line.On, found, line.Channel, null);
        foreach (var lot in found < 0 ? _stock.RemoveAt(line.Channel, -found) : [])
            _ended.Add(new ShelfTime(Age(lot.Made, line.On), ShelfEnd.Gone, lot.Pieces));
    }

    private static int Age(DateOnly made, DateOnly on) => int.Max(0, on.DayNumber - made.DayNumber);

    private readonly record struct SoldPieces(DateOnly Made, Movement Line, int Pieces);
}
