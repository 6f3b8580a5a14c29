using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Decisions;

/// <summary>Whether the time that a price pays for is time that the log has seen.</summary>
public sealed class EnoughMinutes
{
    private const int MinuteDecimals = 2, AQuarter = 4;

    private EnoughMinutes(decimal minutes, decimal now, decimal unhurried) => (Minutes, Now, Unhurried) = (minutes, now, unhurried);

    /// <summary>Minutes of a piece that are enough, 2 decimals, down.</summary>
    public decimal Minutes { get; }

    /// <summary>Minutes that it takes as found.</summary>
    public decimal Now { get; }

    /// <summary>Of these, minutes that must not be hurried.</summary>
    public decimal Unhurried { get; }

    /// <summary>Of a design whose log has the minutes of a whole piece, or of its steps; null where no time is enough, or the log has none.</summary>
    /// <param name="design">The design.</param>
    /// <param name="channel">Where it is sold.</param>
    /// <param name="price">At what.</param>
    public static EnoughMinutes? Of(DesignEvidence design, Channel channel, decimal price)
    {
        if (design.AsFound.Found is not { } piece || design.Draft.Making is not { } making || MinutesOf(making) is not { } now)
            return null;
        var unhurried = (making.Steps ?? []).Where(step => !step.MayBeHurried).Sum(step => step.HandsOnMinutes / step.BatchSize);
        // The floor is a straight line in the minutes that may be hurried: two points of it say where it meets what the price leaves.
        if (now <= unhurried || Hurried(design.Draft, 0.5m, piece.Year) is not { } half)
            return null;
        var (most, least) = (new ChannelFloor(piece, channel).Floor, new ChannelFloor(half, channel).Floor);
        if (most <= least)
            return null;
        var factor = 1 - (most - Sale.Of(price, channel).Net) / (most - least) / 2;
        return factor > 0 ? new EnoughMinutes(Rounding.Down(unhurried + factor * (now - unhurried), MinuteDecimals), now, unhurried) : null;
    }

    /// <summary>Whether the slowest of the best quarter of a design's entries was quick enough; of every step where they are by step.</summary>
    public bool WereReached(DesignEvidence design)
    {
        var whole = Quickest(design.Log.Bench.Where(entry => entry.Step is null));
        if (whole is not null)
            return whole <= Minutes;
        var factor = (Minutes - Unhurried) / (Now - Unhurried);
        var steps = (design.Draft.Making.Steps ?? []).Where(step => step is { MayBeHurried: true, BatchSize: 1, HandsOnMinutes: > 0 })
            .Select(step => (step.HandsOnMinutes, Best: Quickest(design.Log.Bench.Where(entry => entry.Step == step.Name)))).ToList();
        return steps.Count > 0 && steps.TrueForAll(step => step.Best <= factor * step.HandsOnMinutes);
    }

    private static decimal? Quickest(IEnumerable<BenchEntry> entries)
    {
        var minutes = entries.Where(entry => entry is { Started: not null, Minutes: not null })
            .Select(entry => entry.Minutes!.Value / entry.Started!.Value).Order().ToList();
        return minutes.Count == 0 ? null : minutes[(minutes.Count + AQuarter - 1) / AQuarter - 1];
    }

    private static decimal? MinutesOf(Making making) => making.Steps is { } steps ? steps.Sum(step => step.HandsOnMinutes / step.BatchSize)
        : making.MinutesPerPiece;

    private static UnitCost? Hurried(Design design, decimal factor, StudioYear year) => UnitCost.Of(design with
    {
        Making = design.Making with
        {
            MinutesPerPiece = design.Making.MinutesPerPiece * factor,
            Steps = design.Making.Steps?.Select(step => step.MayBeHurried ? step with { HandsOnMinutes = step.HandsOnMinutes * factor } : step)
                .ToList(),
        },
    }, year).Found;
}
