using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Costing;

/// <summary>The formulas of <see cref="YearlyPieces"/>.</summary>
internal readonly struct YearlyPiecesFormulas<T> where T : IFigure<T>
{
    public YearlyPiecesFormulas(UnitCost piece)
    {
        var year = piece.Year;
        T hours = T.Named("benchHoursOfTheYear", year.BenchHours), benchHours = T.Named("benchHours", piece.BenchHours);
        InTheHours = T.Named("piecesInTheHours", (year.NormalUse == 1 ? hours : hours * year.NormalUse) / benchHours);
        var taken = piece.ScarceThings.Count == 0 ? [] : TakenOf(piece);
        WithinLimits = new T[taken.Length];
        var (pieces, least) = (InTheHours, InTheHours.Value);
        for (var i = 0; i < taken.Length; i++)
        {
            WithinLimits[i] = T.Named("piecesWithinLimit", taken[i].Number,
                taken[i].Limit.LoadsPerYear / T.Named("loadsAPiece", taken[i].Number, piece.LoadsOf(taken[i].Limit.Name)));
            pieces = T.Min(pieces, WithinLimits[i]);
            if (Rounding.Settle(WithinLimits[i].Value) < Rounding.Settle(least))
                (least, LimitBeforeHours, Tightest) = (WithinLimits[i].Value, taken[i].Limit, WithinLimits[i]);
        }

        Taken = taken;
        Pieces = T.Named("piecesPerYear", pieces);
        HasFloorWithinLimit = LimitBeforeHours is { LoadsPerYear: > 0 };
        FloorWithinLimit = !HasFloorWithinLimit ? 0 : T.Named("floorWithinLimit", T.Max(0, T.Named("benchMustEarn", year.BenchMustEarn) / Tightest
            + T.Named("materials", piece.Materials) - T.Named("secondsCredit", piece.SecondsCredit)));
    }

    public T InTheHours { get; }

    /// <summary>The profile's limits that the design takes, each with its number among the scarce things of the design, 1 first.</summary>
    public (ResourceLimit Limit, int Number)[] Taken { get; }

    /// <summary>Pieces that each of these limits allows.</summary>
    public T[] WithinLimits { get; }

    public T Pieces { get; }

    public ResourceLimit? LimitBeforeHours { get; }

    public bool HasFloorWithinLimit { get; }

    /// <summary>Means something only if <see cref="HasFloorWithinLimit"/>.</summary>
    public T FloorWithinLimit { get; }

    private T Tightest { get; } = 0;

    private static (ResourceLimit Limit, int Number)[] TakenOf(UnitCost piece) =>
    [
        .. piece.ScarceThings.Select((name, i) => (Limit: piece.Year.Profile.Limits.FirstOrDefault(limit => limit.Name == name), i + 1))
            .Where(taken => taken.Limit is not null).Select(taken => (taken.Limit!, taken.Item2)),
    ];
}
