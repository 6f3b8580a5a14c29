using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Shelves;

namespace PriceFloor.Evidence;

/// <summary>What the profile's designs and days say of it, and the profile with that.</summary>
public sealed record ProfileEvidence(IReadOnlyList<Finding> Findings, CostProfile Draft, bool IsYoung)
{
    /// <summary>The draft's numbers that were found, each with its range.</summary>
    public required IReadOnlyList<DoubtedNumber> Doubts { get; init; }

    /// <summary>The designs that the lines are of, as whoever asks names them.</summary>
    public IReadOnlyList<string> Designs { get; init; } = [];

    /// <param name="profile">The profile.</param>
    /// <param name="shelf">How old the pieces of all its designs were when they went.</param>
    /// <param name="wholeDays">Bench entries of sources that write whole days down.</param>
    /// <param name="choices">What is asked.</param>
    public static ProfileEvidence Of(CostProfile profile, ShelfTimes shelf, IEnumerable<BenchEntry> wholeDays, EvidenceChoices choices)
    {
        var sold = SoldFinding.Of(shelf, choices.Level);
        var found = ProfileFindings.Of(profile, sold, wholeDays, choices.Level).ToList();
        return new ProfileEvidence([.. found.Select(one => one.Finding)], Found<CostProfile>.Draft(profile, found), sold is { IsYoung: true })
        {
            Doubts = [.. found.SelectMany(one => DoubtedNumber.Of(one))],
        };
    }
}
