using PriceFloor.Evidence;

namespace PriceFloor.Api.Evidence;

/// <summary>What the pieces of a design really brought, after everything that the channels took.</summary>
/// <param name="Pieces" example="90">Sold, less those that came back.</param>
/// <param name="Net" example="4324.23">What of it reached the studio.</param>
/// <param name="Contribution" example="3602.92">That less the materials of the design as found.</param>
/// <param name="Earned" example="37.31">What an hour at the bench earned with the minutes as found; null if it has no floor.</param>
/// <param name="EarnedLow" example="36.90">With the upper end of the minutes' range; null if there is none.</param>
/// <param name="EarnedHigh" example="37.72">With the lower end.</param>
/// <param name="EarnedStored" example="62.60">What it would have earned with the design as stored.</param>
/// <param name="PerBenchHour" example="45.00">What an hour must earn.</param>
public sealed record DesignTakeAnswer(int Pieces, decimal Net, decimal? Contribution, decimal? Earned, decimal? EarnedLow, decimal? EarnedHigh,
    decimal? EarnedStored, decimal PerBenchHour)
{
    public static DesignTakeAnswer? Of(DesignEvidence design)
    {
        if (design.Take is not { } take)
            return null;
        var (stored, found) = (design.Known.Stored, design.AsFound.Found);
        var money = stored.Year.Currency;
        var range = design.HasMinutesRange ? design.EarnedRange : null;
        return new DesignTakeAnswer(take.Pieces, money.Round(take.Net), found is null ? null : money.Round(take.Contribution(found)), Earned(found),
            Rounded(range?.Low), Rounded(range?.High), Earned(stored), money.RoundUp(stored.Year.PerBenchHour));

        decimal? Earned(UnitCost? piece) => piece is null ? null : Rounded(take.Earned(piece));

        decimal? Rounded(decimal? earned) => earned is { } exact ? money.Round(exact) : null;
    }
}
