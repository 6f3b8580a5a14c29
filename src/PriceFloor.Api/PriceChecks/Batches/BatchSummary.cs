using PriceFloor.Api.Telemetry;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>How many lines got which answer.</summary>
public sealed record BatchSummary
{
    /// <summary>Prices that meet their target.</summary>
    public long MeetsTarget { get; private set; }

    /// <summary>Prices that carry their share but break the studio's own rule.</summary>
    public long BelowTarget { get; private set; }

    /// <summary>Prices that do not carry their share.</summary>
    public long BelowFloor { get; private set; }

    /// <summary>Lines that got a problem instead.</summary>
    public long Unanswered { get; private set; }

    /// <param name="verdict">The answer; null for a problem.</param>
    public void Count(Verdict? verdict)
    {
        switch (verdict)
        {
            case Verdict.MeetsTarget: MeetsTarget++; break;
            case Verdict.BelowTarget: BelowTarget++; break;
            case Verdict.BelowFloor: BelowFloor++; break;
            default: Unanswered++; break;
        }
    }

    /// <summary>Adds the answers to the service's metrics.</summary>
    public void AddTo(ServiceCounts counts)
    {
        counts.Checked(Verdict.MeetsTarget, MeetsTarget);
        counts.Checked(Verdict.BelowTarget, BelowTarget);
        counts.Checked(Verdict.BelowFloor, BelowFloor);
    }
}
