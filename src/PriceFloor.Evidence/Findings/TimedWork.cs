using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Findings;

/// <summary>Entries of the bench log whose minutes are known, in their order, and the curve through them.</summary>
/// <param name="Step">The step that they are of; null for the whole piece.</param>
/// <param name="Unhurried">Minutes a piece that cannot be learned away.</param>
/// <param name="Entries">The entries.</param>
/// <param name="Fit">The curve; null if there is none.</param>
/// <param name="NoFit">Why there is none.</param>
public sealed record TimedWork(string? Step, decimal Unhurried, IReadOnlyList<LearningEntry> Entries, LearningFit? Fit, LearningFit.Absence NoFit)
{
    /// <summary>Pieces that were begun in all.</summary>
    public long Pieces => Entries.Sum(entry => (long)entry.Started);
}
