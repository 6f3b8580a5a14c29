using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Shelves;

/// <summary>How old pieces of several designs were when they went, and how many of each age.</summary>
public sealed class ShelfTimes
{
    private readonly Dictionary<(int Days, ShelfEnd End), int> _pieces = [];

    /// <summary>How old the first piece made is.</summary>
    public int Oldest { get; private set; }

    /// <summary>By age, each once.</summary>
    public IReadOnlyCollection<ShelfTime> Times =>
        [.. _pieces.OrderBy(age => age.Key).Select(age => new ShelfTime(age.Key.Days, age.Key.End, age.Value))];

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
            _pieces[(days, end)] = checked(_pieces.GetValueOrDefault((days, end)) + pieces);
        if (history.FirstMade is { } made)
            Oldest = int.Max(Oldest, history.To.DayNumber - made.DayNumber);
    }
}
