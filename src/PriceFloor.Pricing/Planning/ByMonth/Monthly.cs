using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>A figure of each of the twelve months.</summary>
internal static class Monthly
{
    public static T[] Of<T>(string symbol, Func<int, T> figure) where T : IFigure<T>
    {
        var months = new T[12];
        for (var month = 0; month < 12; month++)
            months[month] = T.Named(symbol, month + 1, figure(month));
        return months;
    }

    /// <summary>
    /// Some of what there is added up in each month, from the first to the last; 0 where nothing counts. Unless the text of each is kept, months that
    /// are alike are added up once.
    /// </summary>
    /// <param name="symbol">Its symbol.</param>
    /// <param name="items">What there is.</param>
    /// <param name="counts">Whether an item counts in a month, from 0.</param>
    /// <param name="figure">The figure of an item in a month.</param>
    /// <param name="alike">What <see cref="Alike"/> gives; null if no month is like another.</param>
    public static T[] Sum<TItem, T>(string symbol, IReadOnlyList<TItem> items, Func<TItem, int, bool> counts, Func<TItem, int, T> figure,
        int[]? alike = null) where T : IFigure<T>
    {
        var months = new T[12];
        for (var month = 0; month < 12; month++)
            months[month] = !T.IsWritten && alike is not null && alike[month] < month ? months[alike[month]]
                : T.Named(symbol, month + 1, Formulas.Sum(items, month, counts, figure));
        return months;
    }

    /// <summary>For each month the first that has the same figures as it.</summary>
    /// <param name="same">Whether two months have the same figures.</param>
    public static int[] Alike(Func<int, int, bool> same)
    {
        var alike = new int[12];
        for (var month = 0; month < 12; month++)
        {
            alike[month] = month;
            for (var earlier = month - 1; earlier >= 0; earlier--)
                if (same(earlier, month))
                {
                    alike[month] = alike[earlier];
                    break;
                }
        }

        return alike;
    }
}
