using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Quotes;

/// <summary>
/// What a quote must bring in and what its price leaves. Of an issued quote: what was computed then. Money in the profile's currency.
/// </summary>
public sealed record QuoteFiguresAnswer
{
    /// <summary>What the price does for the year; null if there is none.</summary>
    public required OrderVerdict? Verdict { get; init; }

    /// <summary>Whether what the price leaves is at least the floor; null if there is no price.</summary>
    public required bool? CarriesItsShare { get; init; }

    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>What the order must bring in, after everything that the channel takes; rounded up.</summary>
    public required decimal Floor { get; init; }

    /// <summary>The smallest total on the minor unit, as the channel's prices are, that brings it in.</summary>
    public required decimal FloorTotal { get; init; }

    /// <summary>The floor total for each piece, rounded up; null if there are no pieces.</summary>
    public required decimal? PerPiece { get; init; }

    /// <summary>The floor total with the surcharge for a rush, rounded up; null if there is no rush.</summary>
    public required decimal? RushTotal { get; init; }

    /// <summary>The total that is asked; null if there is none.</summary>
    public required decimal? Price { get; init; }

    /// <summary>The part of it that reaches the studio.</summary>
    public required decimal? NetProceeds { get; init; }

    /// <summary>Net proceeds less the floor; negative if the price is short.</summary>
    public required decimal? AboveFloor { get; init; }

    /// <summary>What is paid out for the order before its fees, to the nearest.</summary>
    public required decimal OutOfPocket { get; init; }

    /// <summary>The same rounded up: a smaller deposit makes the maker the client's bank.</summary>
    public required decimal LeastDeposit { get; init; }

    /// <summary>What the price pays for each hour, materials and what is bought taken off.</summary>
    public required decimal? EarnedPerBenchHour { get; init; }

    /// <summary>All hours, those of design, fitting, changes, trials and selling included; up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>Materials, those of trials included.</summary>
    public required decimal Materials { get; init; }

    /// <summary>What is bought: outside work, travel, rights.</summary>
    public required decimal Bought { get; init; }

    /// <summary>The lines in their order.</summary>
    public required IReadOnlyList<QuoteLineAnswer> Lines { get; init; }

    /// <summary>
    /// What done quotes took over what was quoted, the median of the last 20: 1.18 is 18 % more hours. Null if none is done. It changes no other
    /// figure.
    /// </summary>
    /// <example>1.18</example>
    public required decimal? QuotesRun { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required QuoteBasisAnswer Basis { get; init; }

    /// <summary>When the quote was issued; absent for a draft.</summary>
    /// <example>2027-01-02T09:00:00.000000Z</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public DateTimeOffset? IssuedAt { get; init; }

    /// <summary>Defaults that the answer rests on and that lower it, and what the log says of how the work gets quicker.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true, of a draft: each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }

    /// <summary>Of an issued quote: what it would be now; everything else is as it was issued.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public QuoteMovedAnswer? Moved { get; init; }
}

/// <summary>One line of a quote.</summary>
public sealed record QuoteLineAnswer
{
    /// <summary>Its name, or else the name of its design; null if there is none.</summary>
    public required string? Name { get; init; }

    /// <summary>Pieces that are delivered.</summary>
    [WholeNumber]
    public required decimal Quantity { get; init; }

    /// <summary>Pieces started for them, up to six decimals: as many as are lost on average besides, or with sure the whole number below.</summary>
    public required decimal Starts { get; init; }

    /// <summary>Whole pieces to start so that enough come out good nine times in ten, or as surely as sure says.</summary>
    [WholeNumber]
    public required decimal StartsToBeSure { get; init; }

    /// <summary>Bench hours of the run, trials included; up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>Materials of the run, trials included.</summary>
    public required decimal Materials { get; init; }
}

/// <summary>The revisions that a quote's figures rest on; "inline" for what came with the request or is in the quote itself.</summary>
public sealed record QuoteBasisAnswer
{
    /// <summary>The quote, if it is stored: the draft that was issued.</summary>
    /// <example>Q-2027-014@1</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Quote { get; init; }

    /// <summary>The profile.</summary>
    public required string Profile { get; init; }

    /// <summary>The channel.</summary>
    public required string Channel { get; init; }

    /// <summary>The design of each line.</summary>
    public required IReadOnlyList<string> Designs { get; init; }

    /// <summary>How far the log had come, if a line leaves to it how the work gets quicker.</summary>
    /// <example>m1204881+b3310</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Log { get; init; }
}

/// <summary>What the work of an issued quote would cost now.</summary>
public sealed record QuoteMovedAnswer
{
    /// <summary>The floor total now; null with a reason.</summary>
    /// <example>3792.32</example>
    public required decimal? FloorTotal { get; init; }

    /// <summary>Whether it is another than when the quote was issued; null with a reason.</summary>
    public required bool? CostsMoved { get; init; }

    /// <summary>Why there is none now, such as unknown-design: an issued quote holds nothing that it names.</summary>
    /// <example>unknown-design</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }

    /// <summary>Says so if costs have moved.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }
}
