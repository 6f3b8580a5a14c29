namespace PriceFloor.Evidence.Sheets;

/// <summary>Puts lines into the places of <see cref="SettledLines{T}"/> one by one.</summary>
internal sealed class LineSorting<T>
{
    private readonly List<UsedLine<T>> _used = [];
    private readonly List<CancelledLine> _cancelled = [];
    private readonly List<RefusedLogLine> _refused = [];
    private readonly Dictionary<string, LineCount> _unplaced = [];
    private LineCount _refusedCount, _duplicate, _outside;

    public void Use(UsedLine<T> line) => _used.Add(line);

    public void Cancel(CancelledLine line) => _cancelled.Add(line);

    public void Refuse(int line, Code code, decimal money)
    {
        _refused.Add(new RefusedLogLine(line, code));
        _refusedCount += new LineCount(1, money);
    }

    public void Unplace(string name, decimal money) => _unplaced[name] = _unplaced.GetValueOrDefault(name) + new LineCount(1, money);

    public void Repeat(decimal money) => _duplicate += new LineCount(1, money);

    public void PutOutside(decimal money) => _outside += new LineCount(1, money);

    /// <param name="order">Puts what counts into an order that is not that of the sheet.</param>
    /// <param name="at">The entry at a position, from 1.</param>
    public SettledLines<T> Done(Comparison<UsedLine<T>> order, Func<T, int, T> at)
    {
        _used.Sort(order);
        foreach (var (index, line) in _used.Index())
            line.Entry = at(line.Entry, index + 1);
        return new()
        {
            Used = _used,
            Cancelled = _cancelled,
            Refused = [.. _refused.OrderBy(line => line.Line)],
            Unplaced = [.. _unplaced.Select(one => new UnplacedName(one.Key, one.Value))
                .OrderByDescending(one => decimal.Abs(one.Count.Money)).ThenByDescending(one => one.Count.Lines)
                .ThenBy(one => one.Name, StringComparer.Ordinal)],
            RefusedCount = _refusedCount,
            Duplicate = _duplicate,
            Outside = _outside,
        };
    }
}
