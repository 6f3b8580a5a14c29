using System.Runtime.InteropServices;

namespace PriceFloor.Statements;

/// <summary>The days of an account that the files cover.</summary>
public sealed class Coverage
{
    /// <summary>Coverage of one account by these files.</summary>
    public Coverage(string account, IReadOnlyCollection<Covered> files)
    {
        Account = account;
        Overlaps = OverlapsOf(files);
        var (covered, gaps) = (new List<Period>(), new List<Period>());
        foreach (var period in files.Select(file => file.Period).OrderBy(period => period.From).ThenBy(period => period.To))
        {
            if (covered.Count == 0)
            {
                covered.Add(period);
                continue;
            }

            var last = covered[^1];
            if (period.From > last.To.AddDays(1))
            {
                gaps.Add(new Period(last.To.AddDays(1), period.From.AddDays(-1)));
                covered.Add(period);
            }
            else if (period.To > last.To)
            {
                covered[^1] = last with { To = period.To };
            }
        }

        (Covered, Gaps, Months) = (covered, gaps, covered.Sum(period => period.Months));
    }

    public string Account { get; }

    public IReadOnlyList<Period> Covered { get; }

    /// <summary>Days between two files that neither has.</summary>
    public IReadOnlyList<Period> Gaps { get; }

    /// <summary>Days that two files certainly have.</summary>
    public IReadOnlyList<Period> Overlaps { get; }

    /// <summary>Months covered, without the gaps.</summary>
    public decimal Months { get; }

    /// <summary>True if a whole year or more is covered, so nothing must be estimated.</summary>
    public bool IsWholeYear => Rounding.Settle(Months) >= 12;

    private static List<Period> OverlapsOf(IEnumerable<Covered> files)
    {
        var (overlaps, last) = (new List<Period>(), (Period?)null);
        foreach (var period in files.Select(file => file.Certain).OrderBy(period => period.From).ThenBy(period => period.To))
        {
            if (last?.Shared(period) is { } shared)
                overlaps.Add(shared);
            last = last is { } before && before.To > period.To ? before : period;
        }

        return overlaps;
    }
}

/// <summary>The days that one file covers of an account.</summary>
/// <param name="Period">The period that the file is taken to cover.</param>
/// <param name="Certain">The days that it certainly has: the file's own period, else from its first line to its last.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Covered(Period Period, Period Certain);
