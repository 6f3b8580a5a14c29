using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Evidence;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Api.Evidence;

/// <summary>What the lines of one design say of it.</summary>
public sealed record DesignEvidenceAnswer
{
    /// <summary>The design's key.</summary>
    /// <example>RB-014</example>
    public required string Sku { get; init; }

    /// <summary>ISO 4217 code of the amounts: the profile's.</summary>
    /// <example>USD</example>
    public required string Currency { get; init; }

    /// <summary>The findings, in the order of the document.</summary>
    public required IReadOnlyList<FindingAnswer> Findings { get; init; }

    /// <summary>The floor, rounded up.</summary>
    public required FoundFloorAnswer Floor { get; init; }

    /// <summary>The design with all that was found, ready to be stored. Nothing is changed by itself.</summary>
    [JsonConverter(typeof(DraftText<Design>))]
    public required Design Draft { get; init; }

    /// <summary>What its pieces really brought; null if none was sold in the profile's currency.</summary>
    public required TakeAnswer? Take { get; init; }

    /// <summary>How the work got quicker; null if the entries do not show it.</summary>
    public required LearningAnswer? Learning { get; init; }

    /// <summary>Why learning is null.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LearningFit.Absence? LearningReason { get; init; }

    /// <summary>How fast it sells.</summary>
    public required DaysAnswer Days { get; init; }

    /// <summary>Defaults that the floor rests on.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the findings wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: the floor as found, step by step.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }

    public static DesignEvidenceAnswer Of(DesignEvidence design, StudioEvidence studio, bool workings)
    {
        var (stored, money) = (design.Known.Stored, design.Known.Stored.Year.Currency);
        return new DesignEvidenceAnswer
        {
            Sku = design.Known.Sku,
            Currency = money.Code,
            Findings = [.. design.Findings.Select((finding, index) => FindingAnswer.From(finding, money, design.FloorWith(index)))],
            Floor = new(money.RoundUp(stored.Floor), design.AsFound.Found is { } found ? money.RoundUp(found.Floor) : null),
            Draft = design.Draft,
            Take = TakeAnswer.Of(design, studio),
            Learning = LearningAnswer.Of(design, studio.Choices),
            LearningReason = design.Learning is null ? design.NoLearning : null,
            Days = DaysAnswer.Of(design),
            Assumed = AssumptionAnswer.Of(Pricing.Explaining.Assumed.In(stored)),
            Warnings = WarningAnswer.Of(EvidenceWarnings.In(design, studio.Choices)),
            Workings = design.AsFound.Found is { } piece
                ? WorkingAnswer.Of(workings, () => Pricing.Explaining.Workings.Of(piece.Year).Concat(Pricing.Explaining.Workings.Of(piece)))
                : null,
        };
    }
}

/// <summary>The floor as stored and as found.</summary>
/// <param name="Stored">With the design as stored.</param>
/// <param name="AsFound">With its draft; null if the draft has no floor.</param>
public sealed record FoundFloorAnswer(decimal Stored, decimal? AsFound);

/// <summary>How fast a design sells.</summary>
/// <param name="DaysToSell">By this age half of its pieces are sold; null if never so far.</param>
/// <param name="SellThrough">Sold, of those made; null if it is not known what was made.</param>
/// <param name="OnHand">Pieces on hand at all places; null if it is not known.</param>
/// <param name="CoverWeeks">For so many weeks these last at the pace of the days on which there were any.</param>
/// <param name="Matched">Whether pieces were matched by their own numbers, or the first made is the first gone.</param>
public sealed record DaysAnswer(int? DaysToSell, decimal? SellThrough, int? OnHand, decimal? CoverWeeks, Matched Matched)
{
    private const int CoverDecimals = 1;

    public static DaysAnswer Of(DesignEvidence design)
    {
        var shelf = design.Shelf;
        return new DaysAnswer(design.DaysToSell, design.SellThrough is { } share ? Rounding.Nearest(share, Estimate.ShareDecimals) : null,
            shelf is { Made: > 0, Unmatched: 0 } ? shelf.OnHand : null,
            design.CoverWeeks is { } weeks ? Rounding.Nearest(weeks, CoverDecimals) : null,
            shelf.ByPiece && shelf.Made > 0 ? Matched.ByPiece : Matched.FirstIn);
    }
}

/// <summary>How sold pieces are matched with those made.</summary>
public enum Matched { FirstIn, ByPiece }
