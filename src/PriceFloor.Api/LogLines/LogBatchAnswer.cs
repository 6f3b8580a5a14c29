using System.Text.Json.Serialization;
using PriceFloor.Api.Http;
using PriceFloor.Evidence.Sheets;

namespace PriceFloor.Api.LogLines;

/// <summary>What became of the lines that were sent.</summary>
public sealed record LogBatchAnswer
{
    /// <summary>New lines.</summary>
    /// <example>2</example>
    public required int Stored { get; init; }

    /// <summary>Lines that were there with the same content.</summary>
    /// <example>40</example>
    public required int Unchanged { get; init; }

    /// <summary>Lines whose ref said something else before.</summary>
    /// <example>1</example>
    public required int Corrected { get; init; }

    /// <summary>Lines that were there and are no longer: cancelled ones, and with from and to those that were not sent again.</summary>
    /// <example>1</example>
    public required int Withdrawn { get; init; }

    /// <summary>The first 1,000 lines that cannot be used; accounted counts them all.</summary>
    public required IReadOnlyList<RefusedLogLineAnswer> Refused { get; init; }

    /// <summary>The 200 largest names that are no design, alias or channel; accounted counts them all.</summary>
    public required IReadOnlyList<UnplacedNameAnswer> Unplaced { get; init; }

    /// <summary>Every line that was read, in exactly one place.</summary>
    public required LogAccountedAnswer Accounted { get; init; }
}

/// <summary>A line that is refused.</summary>
/// <param name="Line" example="7">Its line in the sheet, or its number in the request, from 1.</param>
/// <param name="Code" example="out-of-range">Why.</param>
public sealed record RefusedLogLineAnswer(int Line, [property: JsonConverter(typeof(CodeText))] Code Code);

/// <summary>A name that leads nowhere until a design or an alias takes it; then send the lines again.</summary>
/// <param name="Name" example="NEW-7">The name.</param>
/// <param name="Lines" example="3">Its lines.</param>
/// <param name="Money" example="72.00">What they brought.</param>
public sealed record UnplacedNameAnswer(string Name, int Lines, decimal Money);

/// <summary>Lines and what they brought: pieces times price of those sold less those that came back.</summary>
/// <param name="Lines" example="2">Lines.</param>
/// <param name="Money" example="162.00">Money.</param>
public sealed record LineCountAnswer(int Lines, decimal Money)
{
    private const int UsualDecimals = 2;

    public static LineCountAnswer Of(LineCount count) => new(count.Lines, Exactly(count.Money));

    /// <summary>Nothing is rounded away.</summary>
    public static decimal Exactly(decimal money) => Rounding.WithDecimals(money, UsualDecimals);
}

/// <summary>What was read is the sum of all others, in lines and in money.</summary>
/// <param name="Read">Everything.</param>
/// <param name="Stored">New lines.</param>
/// <param name="Unchanged">Lines that were there.</param>
/// <param name="Corrected">Lines that replaced another.</param>
/// <param name="Withdrawn">Cancelled lines that were there.</param>
/// <param name="Cancelled">Cancelled lines that were not there.</param>
/// <param name="Duplicate">Lines that are twice in the request.</param>
/// <param name="Outside">Lines before from or after to.</param>
/// <param name="Unplaced">Lines under names that lead nowhere.</param>
/// <param name="Refused">Lines that cannot be used.</param>
public sealed record LogAccountedAnswer(LineCountAnswer Read, LineCountAnswer Stored, LineCountAnswer Unchanged, LineCountAnswer Corrected,
    LineCountAnswer Withdrawn, LineCountAnswer Cancelled, LineCountAnswer Duplicate, LineCountAnswer Outside, LineCountAnswer Unplaced,
    LineCountAnswer Refused);
