using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Shelves;

/// <summary>How old pieces of several designs were when they went, and how many of each age.</summary>
public sealed class ShelfTimes
{
    private const int Ends = (int)ShelfEnd.OnShelf + 1;

    /// <summary>By days and end, as one number.</summary>
    private readonly Dictionary<int, int> _pieces = [];

    /// <summary>How old the first piece made is.</summary>
    public int Oldest { get; private set; }

    /// <summary>By age, each once.</summary>
    public IReadOnlyList<ShelfTime> Times
    {
        get
        {
            var ages = _pieces.Keys.ToArray();
            Array.Sort(ages);
            return Array.ConvertAll(ages, age => new ShelfTime(age / Ends, (ShelfEnd)(age % Ends), _pieces[age]));
        }
    }

    public static ShelfTimes Of(IEnumerable<ShelfHistory> histories)
    {
        var times = new ShelfTimes();
        foreach (var history in histories)
            times.Add(history);
        return times;
    }

    /// <summary>Adds the pieces of a design.</summary>
    public void Add(ShelfHistory history)
    {
        foreach (var (days, end, pieces) in history.Times)
        {
            var age = checked(days * Ends + (int)end);
            _pieces[age] = checked(_pieces.GetValueOrDefault(age) + pieces);
        }

        if (history.FirstMade is { } made)
            Oldest = int.Max(Oldest, history.To.DayNumber - made.DayNumber);
    }
}
