using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Evidence.Statistics;
using PriceFloor.Evidence.WholeShelf;

namespace PriceFloor.Api.ShelfLists;

/// <summary>All designs of a profile that have lines in the log, beside each other.</summary>
public sealed record ShelfAnswer
{
    /// <summary>The profile's key.</summary>
    /// <example>main</example>
    public required string Profile { get; init; }

    /// <summary>ISO 4217 code of the amounts.</summary>
    /// <example>USD</example>
    public required string Currency { get; init; }

    /// <summary>What an hour at the bench must earn.</summary>
    /// <example>45.00</example>
    public required decimal PerBenchHour { get; init; }

    /// <summary>The designs, by sku.</summary>
    public required IReadOnlyList<ShelfLineAnswer> Items { get; init; }

    /// <summary>The fewest designs that together bring 70 % of the contribution, largest first.</summary>
    /// <example>["RB-014"]</example>
    public required IReadOnlyList<string> Carriers { get; init; }

    /// <summary>
    /// Of the year's bench hours, less those that the profile's plan keeps back, the share that all offered designs would take at the pace at which
    /// they are ordered: below 1 some are idle. Null where there are none.
    /// </summary>
    /// <example>0.82</example>
    public required decimal? Scarcity { get; init; }

    /// <summary>What may make the lines wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>Rules of thumb that decisions rest on.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What the answer rests on.</summary>
    public required EvidenceBasisAnswer Basis { get; init; }

    /// <param name="profile">The profile.</param>
    /// <param name="year">Its year.</param>
    /// <param name="shelf">Its shelf.</param>
    /// <param name="warnings">What may make the lines wrong.</param>
    /// <param name="log">How far the log had come.</param>
    public static ShelfAnswer Of(Stored<CostProfile> profile, StudioYear year, StudioShelf shelf, IEnumerable<Warning> warnings, string log) => new()
    {
        Profile = profile.Key,
        Currency = year.Currency.Code,
        PerBenchHour = year.Currency.RoundUp(year.PerBenchHour),
        Items = [.. shelf.Lines.Select(ShelfLineAnswer.Of)],
        Carriers = shelf.Carriers,
        Scarcity = shelf.Scarcity is { } scarcity ? Rounding.Nearest(scarcity, Estimate.ShareDecimals) : null,
        Warnings =
        [
            .. WarningAnswer.Of(shelf.Lines.Index().SelectMany(line =>
                    line.Item.Decision.Warnings(FormattableString.Invariant($"/items/{line.Index}")))
                .Concat(warnings)),
        ],
        Assumed = [.. DecisionAnswer.AssumedBy(shelf.Lines)],
        Basis = new EvidenceBasisAnswer { Profile = profile.Basis, Log = log },
    };
}
