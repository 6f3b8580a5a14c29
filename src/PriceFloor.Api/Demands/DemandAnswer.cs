using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Evidence.Logged;
using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Prices;
using PriceFloor.Evidence.Shelves;

namespace PriceFloor.Api.Demands;

/// <summary>How often a design is ordered on a channel, and what that suggests to ask. Nothing is changed by itself.</summary>
public sealed record DemandAnswer
{
    /// <summary>The design's key.</summary>
    /// <example>RB-014</example>
    public required string Sku { get; init; }

    /// <summary>The channel's key.</summary>
    /// <example>web</example>
    public required string Channel { get; init; }

    /// <summary>ISO 4217 code of the amounts.</summary>
    /// <example>USD</example>
    public required string Currency { get; init; }

    /// <summary>What a bench hour is worth.</summary>
    public required Aim Aim { get; init; }

    /// <summary>What is asked; null where it is not listed and no line says it.</summary>
    /// <example>52.00</example>
    public required decimal? Price { get; init; }

    /// <summary>The floor price of the design as found.</summary>
    /// <example>60.51</example>
    public required decimal FloorPrice { get; init; }

    /// <summary>How often it is ordered; null where it could never be bought.</summary>
    public required DemandRateAnswer? Rate { get; init; }

    /// <summary>The times of one price each, in order.</summary>
    public required IReadOnlyList<PriceRunAnswer> Runs { get; init; }

    /// <summary>Before and after the last change of price; null where there was none.</summary>
    public required PriceChangeAnswer? ChangePaid { get; init; }

    /// <summary>Why changePaid is null.</summary>
    /// <example>no-price-change</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? ChangePaidReason { get; init; }

    /// <summary>How buyers answer to price.</summary>
    public required SensitivityAnswer Sensitivity { get; init; }

    /// <summary>What to expect; null where no price or no rate is known.</summary>
    public required ExpectedAnswer? Expected { get; init; }

    /// <summary>
    /// The price that brings most; null where no price or no rate is known. It is a direction, not a price to ask at once: see next.
    /// </summary>
    /// <example>88.79</example>
    public required decimal? Best { get; init; }

    /// <summary>The same if buyers mind prices as much as they may.</summary>
    /// <example>76.96</example>
    public required decimal? BestLow { get; init; }

    /// <summary>The same if they mind them as little as they may.</summary>
    /// <example>129.84</example>
    public required decimal? BestHigh { get; init; }

    /// <summary>
    /// The step towards it, on the channel's grid, at most 15 % above the highest price ever asked; null where there is none to offer.
    /// </summary>
    /// <example>69.00</example>
    public required decimal? Next { get; init; }

    /// <summary>Why next is null.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public NextPriceReason? NextReason { get; init; }

    /// <summary>So many pieces should be there for these days; null where no price is known, or a leftover costs nothing.</summary>
    /// <example>16</example>
    public required decimal? MakeUpTo { get; init; }

    /// <summary>How likely all orders of these days are met with that many.</summary>
    /// <example>0.8332</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? MakeUpToChance { get; init; }

    /// <summary>How many pieces the market takes in these days, for a plan; null where no rate is known.</summary>
    public required MaximumAnswer? Maximum { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>What the figures rest on that nobody measured.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What the answer rests on.</summary>
    public required EvidenceBasisAnswer Basis { get; init; }

    /// <summary>With workings=true: the floor as found, and how the rate and the best price came about.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }

    internal static DemandAnswer Of(PriceQuestion question, StudioDemand studio, DemandQuery asked, ShelfHistory shelf, EvidenceBasisAnswer basis,
        IEnumerable<Warning> warnings)
    {
        var (demand, piece) = (question.Demand, question.Piece);
        var (money, median) = (piece.Year.Currency, studio.Shelves.First(one => one.Key == demand.Offer.Key).MedianRate);
        var suggested = SuggestedPrices.Of(question, asked);
        var change = PriceChange.Of(demand, piece, asked.Aim);
        return new DemandAnswer
        {
            Sku = demand.Offer.Sku,
            Channel = demand.Offer.Key,
            Currency = money.Code,
            Aim = asked.Aim,
            Price = demand.Offer.Price is { } price ? Rounding.WithDecimals(price, money.Decimals) : null,
            FloorPrice = question.Prices.FloorPrice,
            Rate = DemandRateAnswer.Of(demand, median),
            Runs = [.. demand.Runs.Select(run => PriceRunAnswer.Of(run, demand, money))],
            ChangePaid = PriceChangeAnswer.Of(change, money),
            ChangePaidReason = change is null ? EvidenceReasonCodes.NoPriceChange : null,
            Sensitivity = SensitivityAnswer.Of(question.Sensitivity),
            Expected = suggested.Expected,
            Best = suggested.Best?.Value,
            BestLow = suggested.Best?.Low,
            BestHigh = suggested.Best?.High,
            Next = suggested.Next?.Price is { } next ? Rounding.WithDecimals(next, money.Decimals) : null,
            NextReason = suggested.Next?.Reason,
            MakeUpTo = suggested.MakeUpTo?.Pieces,
            MakeUpToChance = suggested.MakeUpTo is { Pieces: not null } enough ? enough.Reach : null,
            Maximum = MaximumAnswer.From(suggested.Takes),
            Warnings = WarningAnswer.Of(PriceWarnings.Of(question, studio, shelf).Concat(PriceWarnings.Of(suggested.Takes)).Concat(warnings)),
            Assumed = AssumptionAnswer.Of(PriceWarnings.Assumed),
            Basis = basis,
            Workings = WorkingAnswer.Of(asked.Workings, () => DemandWorkings.Of(question, asked, suggested)),
        };
    }
}
