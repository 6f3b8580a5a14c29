using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence;

/// <summary>What the bench log of a design says for its next run: the rate of its learning, and the pieces that taught it.</summary>
public static class LoggedLearning
{
    private const decimal LowestRate = 0.5m, MostPieces = 1_000_000;

    /// <summary>
    /// The learning that a design's evidence has, as a quote has it; null if the entries show none. A curve of one step alone says nothing of
    /// others that could be learned, so it counts only if there are none.
    /// </summary>
    /// <param name="design">The design.</param>
    /// <param name="calendar">Its profile's calendar.</param>
    /// <param name="bench">Its bench entries.</param>
    /// <param name="since">The first day of its present way of making; null: it never had another.</param>
    /// <param name="choices">The days that count.</param>
    public static Learning? Of(Design design, StudioCalendar calendar, IReadOnlyList<BenchEntry> bench, DateOnly? since, EvidenceChoices choices)
    {
        var entries = LogLines.Counting(bench, choices, since);
        return BenchFindings.Of(design, calendar, entries, (choices.Level, GoodPriors.Nothing)).Timed is { Fit: { } fit } timed
            && (timed.Step is null || design.Making.Steps!.Count(step => step is { MayBeHurried: true, BatchSize: <= 1 }) == 1)
            ? new Learning { Rate = decimal.Max(LowestRate, fit.Rate.Value), MadeBefore = decimal.Min(MostPieces, fit.Pieces) } : null;
    }
}
