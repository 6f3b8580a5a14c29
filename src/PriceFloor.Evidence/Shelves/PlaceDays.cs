namespace PriceFloor.Evidence.Shelves;

/// <summary>The days on which a piece was at a place, from day to day.</summary>
internal sealed class PlaceDays
{
    private readonly Dictionary<string, List<DaySpan>> _spans = new(StringComparer.Ordinal);
    private readonly Dictionary<string, DateOnly> _open = new(StringComparer.Ordinal);

    /// <summary>So many pieces are there now. A day counts if a piece was there at any time of it.</summary>
    public void Note(DateOnly day, string? place, int pieces)
    {
        var key = place ?? "";
        if (pieces > 0)
            Open(key, day);
        else if (_open.Remove(key, out var from))
            _spans[key].Add(new DaySpan(from, day));
    }

    /// <summary>The days of a place up to a last one, in order; null where no piece ever was.</summary>
    public IReadOnlyList<DaySpan>? At(string? place, DateOnly to)
    {
        if (!_spans.TryGetValue(place ?? "", out var spans))
            return null;
        return _open.TryGetValue(place ?? "", out var from) ? [.. spans, new DaySpan(from, to)] : spans;
    }

    private void Open(string key, DateOnly day)
    {
        if (!_spans.TryGetValue(key, out var spans))
            _spans.Add(key, spans = []);
        if (_open.ContainsKey(key))
            return;
        // Sold out and filled again on one day, or on the next: the days go on.
        if (spans.Count > 0 && spans[^1].To.AddDays(1) >= day)
        {
            _open.Add(key, spans[^1].From);
            spans.RemoveAt(spans.Count - 1);
        }
        else
        {
            _open.Add(key, day);
        }
    }
}
