using System.Text.Json.Serialization;

namespace PriceFloor.Api.Remedies;

/// <summary>One way to fix the price, alone.</summary>
public sealed record RemedyAnswer
{
    /// <summary>Which way.</summary>
    public required RemedyKind Remedy { get; init; }

    /// <summary>
    /// What before and after count: a listed price, bench minutes a sold piece, money a year, an order or a sold piece, the share of pieces that
    /// come out good, working hours a week, pieces an order or a stall, the share that a shop keeps, or the usual
    /// discount; with sell-elsewhere nothing.
    /// </summary>
    public required RemedyMeasure Measure { get; init; }

    /// <summary>Whether it can be enough alone.</summary>
    public required bool Possible { get; init; }

    /// <summary>The figure today, in terms of measure; null if nothing of the price reaches the studio.</summary>
    public decimal? Before { get; init; }

    /// <summary>The figure that is enough, in terms of measure and rounded to the safe side; null if the way is not possible.</summary>
    public decimal? After { get; init; }

    /// <summary>The relative change from before to after: -0.5 is half of it. Up to 6 decimals; null from 0 and without figures.</summary>
    /// <example>-0.06075</example>
    public decimal? By { get; init; }

    /// <summary>The change in the maker's words, such as "41 bench minutes a piece instead of 52", or why it cannot be.</summary>
    public required string InWords { get; init; }

    /// <summary>A stable word if the way is not possible.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }

    /// <summary>With spend-less: what the year's costs must fall by, rounded up. After is before less this; it is the figure to plan with.</summary>
    /// <example>4040.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Cut { get; init; }

    /// <summary>With work-faster: the design's own figures, step by step; all of them together are enough.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<DesignFigureAnswer>? InTheDesign { get; init; }

    /// <summary>With sell-elsewhere: the channels on which the piece holds at its listed price, or else from at most this price on.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<SoldElsewhereAnswer>? Channels { get; init; }

    /// <summary>"long-week" where the figure is there to be seen, not to be followed.</summary>
    /// <example>long-week</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Flag { get; init; }

    public static RemedyAnswer Of(Remedy one) => new()
    {
        Remedy = one.Kind,
        Measure = one.Measure,
        Possible = one.Possible,
        Before = one.Before,
        After = one.After,
        By = one.By is { } by ? Rounding.Trim(by) : null,
        Cut = one.Cut,
        InTheDesign = one.InTheDesign is { Count: > 0 } figures
            ? [.. figures.Select(figure =>
                new DesignFigureAnswer { At = figure.At, What = figure.What, Before = figure.Before, After = figure.After })]
            : null,
        Channels = one.Channels is { Count: > 0 } channels
            ? [.. channels.Select(other => new SoldElsewhereAnswer { Channel = other.Channel, Price = other.Price, Listed = other.Listed })]
            : null,
        InWords = one.InWords,
        Reason = one.Reason,
        Flag = one.Flag,
    };
}

/// <summary>A figure of the design today, and the one that is enough.</summary>
public sealed record DesignFigureAnswer
{
    /// <summary>Where it stands in the design, as a JSON Pointer.</summary>
    /// <example>/making/steps/0/handsOnMinutes</example>
    public required string At { get; init; }

    /// <summary>The name of its step, or what it counts.</summary>
    /// <example>torch</example>
    public required string What { get; init; }

    /// <summary>The figure today.</summary>
    public required decimal Before { get; init; }

    /// <summary>The figure that is enough, rounded to the safe side.</summary>
    public required decimal After { get; init; }
}

/// <summary>Another channel on which the piece holds.</summary>
public sealed record SoldElsewhereAnswer
{
    /// <summary>Its key.</summary>
    /// <example>fair</example>
    public required string Channel { get; init; }

    /// <summary>The price listed there; if none that holds is listed, the lowest that holds.</summary>
    /// <example>64.00</example>
    public required decimal Price { get; init; }

    /// <summary>Whether that price is listed.</summary>
    public required bool Listed { get; init; }
}
