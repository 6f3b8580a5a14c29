using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>The river drop pendant of the worked example: twelve loads of twelve, and what became of the 126 good pieces.</summary>
internal static class WorkedExample
{
    public static readonly int[] Minutes = [792, 706, 668, 655, 622, 640, 610, 598, 607, 585, 590, 571];

    public static readonly int[] Good = [11, 12, 9, 11, 12, 6, 11, 10, 11, 12, 10, 11];

    public static IReadOnlyList<LearningEntry> Entries => [.. Minutes.Select(minutes => new LearningEntry(12, minutes))];

    public static IReadOnlyList<Lot> Lots => [.. Good.Select(good => new Lot(12, good))];

    /// <summary>
    /// Load j was made on day 30j and is seen on day 365. Piece i: u = (37i mod 127)/127, sold at age ceil(-110 ln(1-u)) if that has been; but
    /// 10, 55, 90 are given at 60, and 20, 70 lost at 90.
    /// </summary>
    public static IEnumerable<(int Load, ShelfTime Time)> Fates()
    {
        var piece = 0;
        foreach (var (load, good) in Good.Index())
            for (var i = 0; i < good; i++)
                yield return (load, FateOf(++piece, 365 - 30 * load));
    }

    private static ShelfTime FateOf(int piece, int oldest)
    {
        var share = 37 * piece % 127 / 127d;
        var (age, end) = piece switch
        {
            10 or 55 or 90 => (60, ShelfEnd.Gone),
            20 or 70 => (90, ShelfEnd.Gone),
            _ => ((int)double.Ceiling(-110 * double.Log(1 - share)), ShelfEnd.Sold),
        };
        return age <= oldest ? new ShelfTime(age, end) : new ShelfTime(oldest, ShelfEnd.OnShelf);
    }
}
