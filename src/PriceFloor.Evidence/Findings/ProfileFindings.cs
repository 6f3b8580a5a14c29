using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Findings;

/// <summary>What all designs of a profile and its days at the bench say of it.</summary>
internal static class ProfileFindings
{
    private const int FewDays = 10;

    public static IEnumerable<Found<CostProfile>> Of(CostProfile profile, SoldFinding? sold, IEnumerable<BenchEntry> wholeDays, decimal level)
    {
        if (sold is not null)
            yield return sold.As<CostProfile>(profile.SoldShare, (document, share) => document with { SoldShare = share });
        var days = wholeDays.Where(entry => entry.Minutes > 0).GroupBy(entry => entry.On).OrderBy(day => day.Key)
            .Select(day => new RatioPart(day.Where(entry => entry.Sku is not null).Sum(entry => entry.Minutes!.Value),
                day.Sum(entry => entry.Minutes!.Value)))
            .ToList();
        if (Ratio.Of(days)?.At(level, Estimate.ShareDecimals) is not { } found)
            yield break;
        var share = found with { High = found.High is { } high ? decimal.Min(1, high) : null };
        yield return new Found<CostProfile>(
            new Finding
            {
                Pointer = "/calendar/benchShare",
                Estimate = share,
                Observations = days.Count,
                Of = "days",
                Stored = profile.Calendar.BenchShare,
                Says = Finding.Judge(share, profile.Calendar.BenchShare, days.Count >= FewDays),
            },
            // Selling and the bench together are never more than the day.
            document => document with
            {
                Calendar = document.Calendar with { BenchShare = decimal.Min(share.Value, 1 - document.Calendar.SellingShare) },
            });
    }
}
