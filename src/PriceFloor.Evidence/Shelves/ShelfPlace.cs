namespace PriceFloor.Evidence.Shelves;

/// <summary>A place where pieces of a design are: how many, and on which days there was one.</summary>
/// <param name="channel">The channel's key; null for the studio.</param>
internal sealed class ShelfPlace(string? channel)
{
    private List<DaySpan>? _spans;
    private DateOnly? _since;

    public string? Channel => channel;

    public int Pieces { get; set; }

    /// <summary>The pieces stand as they do on a day, which counts if one was there at any time of it.</summary>
    public void Note(DateOnly day)
    {
        if (Pieces > 0)
        {
            _since ??= Since(day);
        }
        else if (_since is { } from)
        {
            (_spans ??= []).Add(new DaySpan(from, day));
            _since = null;
        }
    }

    /// <summary>The days up to a last one, in order; null where no piece ever was.</summary>
    public IReadOnlyList<DaySpan>? DaysUpTo(DateOnly to) => _since is { } from ? [.. _spans ?? [], new DaySpan(from, to)] : _spans;

    /// <summary>Sold out and filled again on one day, or on the next: the days go on.</summary>
    private DateOnly Since(DateOnly day)
    {
        if (_spans is not [.., var last] || last.To.AddDays(1) < day)
            return day;
        _spans.RemoveAt(_spans.Count - 1);
        return last.From;
    }
}
