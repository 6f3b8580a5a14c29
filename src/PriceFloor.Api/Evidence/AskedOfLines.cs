using PriceFloor.Api.Http.Reading;
using PriceFloor.Evidence.Findings;

namespace PriceFloor.Api.Evidence;

/// <summary>Which lines to look at, how sure to be, and what of the learning curve to say.</summary>
public sealed record AskedOfLines
{
    private const int MostPieces = 100_000;

    /// <summary>The first day; null: all that there is.</summary>
    public DateOnly? From { get; private init; }

    /// <summary>The last day; null: today.</summary>
    public DateOnly? To { get; private init; }

    public decimal Level { get; private init; } = EvidenceChoices.UsualLevel;

    public int? At { get; private init; }

    public int Run { get; private init; } = EvidenceChoices.UsualRun;

    /// <summary>The parameters of every question to lines.</summary>
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("from", "Lines before this day are left out. If absent: the bench log counts from the last change of a design's steps.", "string", "date",
            "2026-01-01"),
        new("to", "Lines after this day are left out, and unsold pieces are as old as it says. If absent: today, UTC.", "string", "date",
            "2026-12-31"),
        new("level", "How often the range of a finding is to hold.", "number", "decimal", "0.9", Minimum: EvidenceChoices.LowestLevel,
            Maximum: EvidenceChoices.HighestLevel, Default: "0.9"),
    ];

    /// <summary>Those of questions to bench entries.</summary>
    public static IReadOnlyList<QueryParameter> OfLearning =>
    [
        new("at", "Adds what a piece will take after so many more pieces, by the learning curve.", "integer", Example: "100", Minimum: 1,
            Maximum: MostPieces),
        new("run", "The pieces of the next run, of which learning has the mean minutes.", "integer", Example: "60", Minimum: 1, Maximum: MostPieces,
            Default: "60"),
    ];

    public static AskedOfLines Of(QueryValues values, bool withLearning)
    {
        var read = new AskedOfLines
        {
            From = values.Date("from"),
            To = values.Date("to"),
            Level = values.Number("level", new ShareAttribute { Minimum = "0.5", Maximum = "0.99" }) ?? EvidenceChoices.UsualLevel,
            At = withLearning ? values.IntegerOrNull("at", 1, MostPieces) : null,
            Run = withLearning ? values.Integer("run", 1, MostPieces, EvidenceChoices.UsualRun) : EvidenceChoices.UsualRun,
        };
        if (read.To < read.From)
            values.Add("to", FaultCodes.OutOfOrder, "to must not be before from.");
        return read;
    }

    /// <summary>The same as evidence understands it.</summary>
    /// <param name="today">The day of the answer.</param>
    /// <param name="channel">Key of the channel whose sales the take is of; null: all.</param>
    public EvidenceChoices Choices(DateOnly today, string? channel = null) =>
        new() { From = From, To = To ?? today, Level = Level, At = At, Run = Run, Channel = channel };
}
