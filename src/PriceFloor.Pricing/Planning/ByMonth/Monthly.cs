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

    /// <summary>The same, computed once for months that are alike, unless the text of each is kept.</summary>
    /// <param name="symbol">Its symbol.</param>
    /// <param name="figure">The figure of a month, from 0.</param>
    /// <param name="alike">What <see cref="Alike"/> gives.</param>
    public static T[] Of<T>(string symbol, Func<int, T> figure, int[] alike) where T : IFigure<T>
    {
        var months = new T[12];
        for (var month = 0; month < 12; month++)
            months[month] = !T.IsWritten && alike[month] < month ? months[alike[month]] : T.Named(symbol, month + 1, figure(month));
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
