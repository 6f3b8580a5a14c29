using System.Globalization;
using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Findings;

namespace PriceFloor.Evidence.Decisions;

/// <summary>The decision on a design of a studio, and the facts that it rests on.</summary>
/// <param name="Facts">The facts.</param>
/// <param name="Decision">The decision.</param>
public sealed record DesignDecision(DecisionFacts Facts, Decision Decision)
{
    private const int DaysAYear = 365;
    private const decimal Median = 0.5m;

    /// <summary>The decision on a design, by the channel on which it has the most orders.</summary>
    /// <param name="design">What its lines say.</param>
    /// <param name="demand">The demand of its profile.</param>
    /// <param name="floorPrice">The floor price of a piece on a channel; null where there is none.</param>
    /// <param name="scarcity">Of the hours that are there, the share that all offered designs take.</param>
    public static DesignDecision Of(DesignEvidence design, StudioDemand demand, Func<UnitCost, Channel, decimal?> floorPrice, decimal? scarcity)
    {
        var channels = demand.Of(design.Known.Sku);
        var main = channels.Count == 0 ? null : channels[0];
        var facts = new DecisionFacts
        {
            Orders = channels.Sum(channel => channel.All.Orders),
            DaysOnOffer = channels.Select(channel => channel.Offer.DaysOnOffer).DefaultIfEmpty(0).Max(),
            PerHour = design.Known.Stored.Year.PerBenchHour,
            Earned = design.EarnedRange,
            SoldOutShare = main?.Offer.SoldOutShare,
            NextPieces = main is null ? null
                : main.OrdersWithin(main.TimeOf(DecisionRules.NextDays), Median) * main.Offer.PiecesPerOrder,
            PiecesToBeHad = design.Shelf.OnHand + (design.AsFound.Found?.PiecesPerYear ?? 0) * DecisionRules.NextDays / DaysAYear,
            Price = main?.Offer.Price,
            FloorPrice = main is not null && design.AsFound.Found is { } piece ? floorPrice(piece, main.Offer.Channel) : null,
            EnoughMinutesWereReached = main?.Offer.Price is { } price
                && EnoughMinutes.Of(design, main.Offer.Channel, price)?.WereReached(design) == true,
            Rate = main?.PlainRate,
            MedianRate = main is null ? null : demand.Shelves.First(shelf => shelf.Key == main.Offer.Key).MedianRate,
            Contribution = StudioEvidence.Contribution(design),
            Scarcity = scarcity,
        };
        return new DesignDecision(facts, Decision.Of(facts));
    }

    /// <summary>What the decision rests on, as pointers into the evidence of the design, such as <c>#/findings/0</c>.</summary>
    public IReadOnlyList<string> BecauseIn(DesignEvidence design) => [.. Decision.Because.Select(ground => ground switch
    {
        DecisionGround.Minutes => design.Findings.Index().Where(finding => IsMinutes(finding.Item.Pointer))
            .OrderBy(finding => finding.Item.Pointer.EndsWith("/handsOnMinutes", StringComparison.Ordinal)) // of the whole piece, else of a step
            .Select(finding => string.Create(CultureInfo.InvariantCulture, $"#/findings/{finding.Index}")).FirstOrDefault(),
        DecisionGround.Floor => "#/floor",
        DecisionGround.Days => "#/days",
        _ => "#/take",
    }).OfType<string>()];

    private static bool IsMinutes(string pointer) =>
        pointer is "/making/steps" or "/making/minutesPerPiece" || pointer.EndsWith("/handsOnMinutes", StringComparison.Ordinal);

    /// <summary>What may make the decision wrong.</summary>
    /// <param name="pointer">Where the decision is in the answer.</param>
    public IEnumerable<Warning> Warnings(string pointer) => !Decision.IsTooCloseToTell ? []
        : [new(EvidenceWarningCodes.TooCloseToTell, "What an hour at the bench must earn lies within what it may have earned.", pointer)];

    /// <summary>Of the designs whose demand is not met, the one that earns most an hour: hours freed by dropping another go there.</summary>
    /// <param name="designs">Each design by its key, with its decision.</param>
    /// <param name="dropped">The key of the one that is dropped.</param>
    public static string? InItsPlace(IEnumerable<KeyValuePair<string, DesignDecision>> designs, string dropped) => designs
        .Where(design => design.Key != dropped && design.Value.Facts.Earned is not null && Decision.IsDemandUnmet(design.Value.Facts))
        .OrderByDescending(design => design.Value.Facts.Earned!.Value.Low).ThenBy(design => design.Key, StringComparer.Ordinal)
        .Select(design => design.Key).FirstOrDefault();
}
