using System.ComponentModel.DataAnnotations;
using PriceFloor.Evidence.Sheets;

namespace PriceFloor.Api.LogLines;

/// <summary>One batch at the bench: so many started, so many good, so many minutes, all for the whole batch.</summary>
public sealed record BenchEntryRequest
{
    /// <summary>Who says so: a name of your own for the book or program; the query's source if absent.</summary>
    /// <example>bench-book</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public string? Source { get; init; }

    /// <summary>The source's own id of the line: the same again changes nothing, other content corrects it. Only its hash is kept.</summary>
    /// <example>2027-03-02/1</example>
    [MaxLength(LogRanges.MostText)]
    public string? Ref { get; init; }

    /// <summary>The local day.</summary>
    /// <example>2027-03-02</example>
    public required DateOnly On { get; init; }

    /// <summary>Key or alias of a stored design; absent for work away from pieces, which has only minutes.</summary>
    /// <example>RB-014</example>
    [MaxLength(Limits.AliasLength)]
    public string? Sku { get; init; }

    /// <summary>Name of the step; the whole piece if absent.</summary>
    /// <example>torch</example>
    [MaxLength(LogRanges.MostText)]
    public string? Step { get; init; }

    /// <summary>Pieces started: a whole number from 1.</summary>
    /// <example>12</example>
    [Pieces(Minimum = "1", Maximum = "1000000")]
    public decimal? Started { get; init; }

    /// <summary>Pieces that came out good: at most as many as were started.</summary>
    /// <example>11</example>
    [Pieces(Minimum = "0", Maximum = "1000000")]
    public decimal? Good { get; init; }

    /// <summary>Minutes, up to two decimals.</summary>
    /// <example>792</example>
    [Quantity]
    public decimal? Minutes { get; init; }

    /// <summary>The line as a sheet would have it.</summary>
    /// <param name="line">Its number in the request.</param>
    public SentBenchEntry AsSent(int line) => BenchRules.Checked(new SentBenchEntry
    {
        Line = line,
        On = On,
        Ref = Ref,
        Sku = Sku,
        Step = Step,
        Started = (int?)Started,
        Good = (int?)Good,
        Minutes = Minutes,
    });
}
