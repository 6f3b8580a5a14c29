using PriceFloor.Evidence;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Api.Evidence;

/// <summary>What the pieces of a design really brought, after everything that the channels took.</summary>
/// <param name="Pieces">Sold, less those that came back.</param>
/// <param name="Net">What of it reached the studio.</param>
/// <param name="Contribution">That less the materials of the design as found.</param>
/// <param name="Earned">What an hour at the bench earned with the minutes as found; null if it has no floor.</param>
/// <param name="EarnedLow">With the upper end of the minutes' range; null if there is none.</param>
/// <param name="EarnedHigh">With the lower end.</param>
/// <param name="EarnedStored">What it would have earned with the design as stored.</param>
/// <param name="PerBenchHour">What an hour must earn.</param>
/// <param name="ShareOfContribution">Its share of what all designs here contribute; null if they contribute nothing.</param>
/// <param name="ShareOfHours">Its share of the bench hours of what was sold.</param>
/// <param name="Pull">The first share over the second: above 1 it carries others.</param>
public sealed record TakeAnswer(int Pieces, decimal Net, decimal? Contribution, decimal? Earned, decimal? EarnedLow, decimal? EarnedHigh,
    decimal? EarnedStored, decimal PerBenchHour, decimal? ShareOfContribution, decimal? ShareOfHours, decimal? Pull)
{
    public static TakeAnswer? Of(DesignEvidence design, StudioEvidence studio)
    {
        if (DesignTakeAnswer.Of(design) is not { } take)
            return null;
        var (ofAll, ofHours) = (studio.ShareOfContribution(design), studio.ShareOfHours(design));
        return new TakeAnswer(take.Pieces, take.Net, take.Contribution, take.Earned, take.EarnedLow, take.EarnedHigh, take.EarnedStored,
            take.PerBenchHour, Share(ofAll), Share(ofHours), ofHours > 0 ? Share(ofAll / ofHours) : null);

        decimal? Share(decimal? share) => share is { } exact ? Rounding.Nearest(exact, Estimate.ShareDecimals) : null;
    }
}
