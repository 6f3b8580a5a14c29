namespace PriceFloor.Pricing.Numbers;

/// <summary>What formulas of any figure share.</summary>
internal static class Formulas
{
    /// <summary>All of them added up, from the first to the last; 0 for none.</summary>
    public static T Sum<T>(T[] figures) where T : IFigure<T>
    {
        if (figures.Length == 0)
            return 0;
        var sum = figures[0];
        for (var i = 1; i < figures.Length; i++)
            sum += figures[i];
        return sum;
    }

    public static T Sum<T>(IEnumerable<T> figures) where T : IFigure<T> => Sum(figures.ToArray());

    /// <summary>The same of some of what there is. A loop: what the framework makes of a type of ours is only compiled when it first runs.</summary>
    public static T Sum<TLine, T>(IReadOnlyList<TLine> lines, Func<TLine, bool> counts, Func<TLine, int, T> figure) where T : IFigure<T>
    {
        T sum = 0;
        var first = true;
        for (var i = 0; i < lines.Count; i++)
        {
            if (!counts(lines[i]))
                continue;
            sum = first ? figure(lines[i], i) : sum + figure(lines[i], i);
            first = false;
        }

        return sum;
    }

    /// <summary>The same in one of some places, such as a month, without an object for each of them.</summary>
    public static T Sum<TLine, T>(IReadOnlyList<TLine> lines, int place, Func<TLine, int, bool> counts, Func<TLine, int, T> figure)
        where T : IFigure<T>
    {
        T sum = 0;
        var first = true;
        for (var i = 0; i < lines.Count; i++)
        {
            if (!counts(lines[i], place))
                continue;
            sum = first ? figure(lines[i], place) : sum + figure(lines[i], place);
            first = false;
        }

        return sum;
    }
}
