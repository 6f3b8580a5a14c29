using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>
/// How the lines of a plan share seasons and channels, and what share of each season a month has. It does not depend on any amount, so plans that
/// differ only in figures can share it.
/// </summary>
internal sealed class SeasonsSold<T> where T : IFigure<T>
{
    private readonly Plan _plan;
    private readonly string?[] _seasons;
    private readonly int[] _seasonOf;

    public SeasonsSold(Plan plan)
    {
        _plan = plan;
        _seasons = [.. plan.Lines.Select(line => line.Season).Distinct()];
        _seasonOf = [.. plan.Lines.Select(line => Array.IndexOf(_seasons, line.Season))];
        Shares = [.. _seasons.Select((season, i) => SharesOf(season is null ? Season.Even : Season.Of(plan.Seasons[season])!, i + 1))];
        Alike = Monthly.Alike((one, other) => Array.TrueForAll(Shares, season => season[one].Value == season[other].Value));
        Channels = [.. plan.Lines.Select(line => line.Channel).Distinct()];
        var remitted = plan.Terms.Where(terms => terms.RemittedByChannel).Select(terms => terms.Channel).ToHashSet();
        Groups = [.. plan.Lines.Index().GroupBy(line => (line.Item.Season, line.Item.Channel), line => line.Index).Select(group =>
            (Array.IndexOf(_seasons, group.Key.Season), Channels.IndexOf(group.Key.Channel), group.ToArray(), remitted.Contains(group.Key.Channel)))];
    }

    /// <summary>The share of each of its months in each season that a line has.</summary>
    public T[][] Shares { get; }

    /// <summary>For each month the first that has the same share of every season.</summary>
    public int[] Alike { get; }

    /// <summary>The keys of the channels, in the order of the lines.</summary>
    public List<string> Channels { get; }

    /// <summary>Lines of one season on one channel, and whether the channel pays its sales tax itself.</summary>
    public IReadOnlyList<(int Season, int Channel, int[] Lines, bool IsRemitted)> Groups { get; }

    /// <summary>Whether another plan's lines share seasons and channels in the same way.</summary>
    public bool Fits(Plan plan)
    {
        if (!HasTheSameSeasons(plan) || !HasTheSameTerms(plan) || plan.Lines.Count != _plan.Lines.Count)
            return false;
        for (var i = 0; i < plan.Lines.Count; i++)
            if (plan.Lines[i].Season != _plan.Lines[i].Season || plan.Lines[i].Channel != _plan.Lines[i].Channel)
                return false;
        return true;
    }

    /// <summary>The share of a line's year that is sold in a month, from 0.</summary>
    public T ShareOf(int line, int month) => Shares[_seasonOf[line]][month];

    private bool HasTheSameSeasons(Plan plan) => ReferenceEquals(plan.Seasons, _plan.Seasons)
        || Array.TrueForAll(_seasons, season => season is null
            || (plan.Seasons.TryGetValue(season, out var weights) && weights.SequenceEqual(_plan.Seasons[season])));

    private bool HasTheSameTerms(Plan plan) => ReferenceEquals(plan.Terms, _plan.Terms) || plan.Terms.SequenceEqual(_plan.Terms);

    private static T[] SharesOf(Season season, int number)
    {
        var symbol = T.IsWritten ? FormattableString.Invariant($"season{number}Month") : "";
        return [.. season.Weights.Select((weight, month) => T.Named(symbol, month + 1, (T)weight / season.Sum))];
    }
}
