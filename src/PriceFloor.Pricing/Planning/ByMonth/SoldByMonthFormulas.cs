using System.Globalization;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>
/// What the lines of a plan sell in each month. Lines of one season on one channel are added up first: 500 lines cost no more than a few.
/// </summary>
internal sealed class SoldByMonthFormulas<T> where T : IFigure<T>
{
    private readonly SeasonsSold<T> _seasons;

    /// <param name="plan">The plan.</param>
    /// <param name="lines">Its lines, priced.</param>
    /// <param name="formulas">Their formulas.</param>
    /// <param name="known">How lines share seasons; used if it fits the plan.</param>
    public SoldByMonthFormulas(Plan plan, IReadOnlyList<PlannedLine> lines, IReadOnlyList<PlannedLineFormulas<T>> formulas,
        SeasonsSold<T>? known = null)
    {
        _seasons = known?.Fits(plan) == true ? known : new SeasonsSold<T>(plan);
        Groups = [.. _seasons.Groups.Select((group, i) =>
            new SoldGroup<T>(group.Season, group.Channel, group.Lines, formulas, group.IsRemitted ? null : lines, i + 1))];
        SoldGroup<T>[][] on = [.. Channels.Select((_, channel) => Groups.Where(group => group.Channel == channel).ToArray())];
        Hours = ByMonth("needHours", Groups, group => group.Hours);
        Materials = ByMonth("materialsSold", Groups, group => group.Materials);
        Proceeds = [.. Channels.Select((_, c) => ByMonth(Symbol("sold", c), on[c], group => group.Proceeds))];
        SalesTax = [.. Channels.Select((_, c) => ByMonth(Symbol("salesTax", c), on[c], group => group.SalesTax))];
    }

    /// <summary>How lines share seasons.</summary>
    public SeasonsSold<T> Seasons => _seasons;

    /// <summary>The keys of the channels, in the order of the lines.</summary>
    public List<string> Channels => _seasons.Channels;

    public IReadOnlyList<SoldGroup<T>> Groups { get; }

    /// <summary>The share of each of its months in each season that a line has.</summary>
    public IReadOnlyList<T[]> Shares => _seasons.Shares;

    /// <summary>Bench hours that the month's sales took.</summary>
    public T[] Hours { get; }

    /// <summary>Their materials, less what seconds bring.</summary>
    public T[] Materials { get; }

    /// <summary>What they leave; computed when first asked for.</summary>
    public T[] Contribution => field ??= ByMonth("contributionMonth", Groups, group => group.Contribution);

    /// <summary>What reaches the studio for the month's sales, by channel.</summary>
    public IReadOnlyList<T[]> Proceeds { get; }

    /// <summary>Sales tax on them that comes to the studio, by channel.</summary>
    public IReadOnlyList<T[]> SalesTax { get; }

    /// <summary>The share of a line's year that is sold in a month, from 0.</summary>
    public T ShareOf(int line, int month) => _seasons.ShareOf(line, month);

    private static string Symbol(string what, int channel) =>
        T.IsWritten ? string.Create(CultureInfo.InvariantCulture, $"{what}{channel + 1}Month") : what;

    private T[] ByMonth(string symbol, IReadOnlyList<SoldGroup<T>> groups, Func<SoldGroup<T>, T> year) => Monthly.Sum(symbol, groups,
        (group, month) => year(group).Value != 0 && _seasons.Shares[group.Season][month].Value != 0,
        (group, month) => _seasons.Shares[group.Season][month] * year(group), _seasons.Alike);
}
