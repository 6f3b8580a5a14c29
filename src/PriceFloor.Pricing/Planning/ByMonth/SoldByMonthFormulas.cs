using System.Globalization;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>
/// What the lines of a plan sell in each month. Lines of one season on one channel are added up first: 500 lines cost no more than a few.
/// </summary>
internal sealed class SoldByMonthFormulas<T> where T : IFigure<T>
{
    private readonly string?[] _seasons;
    private readonly T[][] _shares;
    private readonly IReadOnlyList<PlanLine> _lines;

    public SoldByMonthFormulas(Plan plan, IReadOnlyList<PlannedLine> lines, IReadOnlyList<PlannedLineFormulas<T>> formulas)
    {
        _lines = plan.Lines;
        _seasons = [.. plan.Lines.Select(line => line.Season).Distinct()];
        _shares = [.. _seasons.Select((season, i) => SharesOf(season is null ? Season.Even : Season.Of(plan.Seasons[season])!, i + 1))];
        Channels = [.. plan.Lines.Select(line => line.Channel).Distinct()];
        var remitted = plan.Terms.Where(terms => terms.RemittedByChannel).Select(terms => terms.Channel).ToHashSet();
        Groups = [.. plan.Lines.Index().GroupBy(line => (line.Item.Season, line.Item.Channel), line => line.Index).Select((group, i) =>
            new SoldGroup<T>(Array.IndexOf(_seasons, group.Key.Season), Channels.IndexOf(group.Key.Channel), [.. group], formulas,
                remitted.Contains(group.Key.Channel) ? null : lines, i + 1))];
        Hours = ByMonth("needHours", Groups, group => group.Hours);
        Materials = ByMonth("materialsSold", Groups, group => group.Materials);
        Contribution = ByMonth("contributionMonth", Groups, group => group.Contribution);
        Proceeds = [.. Channels.Select((_, c) =>
            ByMonth(Symbol("sold", c), [.. Groups.Where(group => group.Channel == c)], group => group.Proceeds))];
        SalesTax = [.. Channels.Select((_, c) =>
            ByMonth(Symbol("salesTax", c), [.. Groups.Where(group => group.Channel == c)], group => group.SalesTax))];
    }

    /// <summary>The keys of the channels, in the order of the lines.</summary>
    public List<string> Channels { get; }

    public IReadOnlyList<SoldGroup<T>> Groups { get; }

    /// <summary>The share of each of its months in each season that a line has.</summary>
    public IReadOnlyList<T[]> Shares => _shares;

    /// <summary>Bench hours that the month's sales took.</summary>
    public T[] Hours { get; }

    /// <summary>Their materials, less what seconds bring.</summary>
    public T[] Materials { get; }

    public T[] Contribution { get; }

    /// <summary>What reaches the studio for the month's sales, by channel.</summary>
    public IReadOnlyList<T[]> Proceeds { get; }

    /// <summary>Sales tax on them that comes to the studio, by channel.</summary>
    public IReadOnlyList<T[]> SalesTax { get; }

    /// <summary>The share of a line's year that is sold in a month, from 0.</summary>
    public T ShareOf(int line, int month) => _shares[Array.IndexOf(_seasons, _lines[line].Season)][month];

    private static string Symbol(string what, int channel) =>
        T.IsWritten ? string.Create(CultureInfo.InvariantCulture, $"{what}{channel + 1}Month") : what;

    private static T[] SharesOf(Season season, int number)
    {
        var symbol = T.IsWritten ? string.Create(CultureInfo.InvariantCulture, $"season{number}Month") : "";
        return [.. season.Weights.Select((weight, month) => T.Named(symbol, month + 1, (T)weight / season.Sum))];
    }

    private T[] ByMonth(string symbol, IReadOnlyList<SoldGroup<T>> groups, Func<SoldGroup<T>, T> year)
    {
        var months = new T[12];
        for (var month = 0; month < 12; month++)
            months[month] = T.Named(symbol, month + 1, Formulas.Sum(groups,
                group => year(group).Value != 0 && _shares[group.Season][month].Value != 0,
                (group, _) => _shares[group.Season][month] * year(group)));
        return months;
    }
}
