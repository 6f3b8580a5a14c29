using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.LogLines;
using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;

namespace PriceFloor.Api.Evidence;

/// <summary>How to read the two sheets, and what is asked of their lines.</summary>
public sealed record EvidenceQuery : IQuery<EvidenceQuery>
{
    /// <summary>The names of the sheets, which are their sources if the caller names none.</summary>
    public const string MovementsPart = "movements", BenchPart = "bench";

    private const string Bench = "bench.";
    private const int MostPieces = 100_000;

    public DateTimeOffset? AsOf { get; private init; }

    /// <summary>The key of the profile whose designs are asked about; null: all that the key may see.</summary>
    public string? Against { get; private init; }

    public DateOnly? From { get; private init; }

    public DateOnly? To { get; private init; }

    public decimal Level { get; private init; } = EvidenceChoices.UsualLevel;

    public int? At { get; private init; }

    public int Run { get; private init; } = EvidenceChoices.UsualRun;

    public bool Workings { get; private init; }

    public string MovementSource { get; private init; } = MovementsPart;

    public LogSheet Movements { get; private init; } = new();

    public LogSheet BenchSheet { get; private init; } = new();

    /// <summary>The bench book, and what it says of whole days and of what was made.</summary>
    public LogSource BenchSource { get; private init; } = new(BenchPart);

    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("against", "Key of a stored profile: only its designs are looked at. If absent: all designs, each in its own profile's year.", "string",
            Example: "main"),
        new("from", "Lines before this day are left out. If absent: the bench log counts from the last change of a design's steps.", "string", "date",
            "2026-01-01"),
        new("to", "Lines after this day are left out, and unsold pieces are as old as it says. If absent: today, UTC.", "string", "date",
            "2026-12-31"),
        new("level", "How often the range of a finding is to hold.", "number", "decimal", "0.9", Minimum: EvidenceChoices.LowestLevel,
            Maximum: EvidenceChoices.HighestLevel, Default: "0.9"),
        new("at", "Adds what a piece will take after so many more pieces, by the learning curve.", "integer", Example: "100", Minimum: 1,
            Maximum: MostPieces),
        new("run", "The pieces of the next run, of which learning has the mean minutes.", "integer", Example: "60", Minimum: 1, Maximum: MostPieces,
            Default: "60"),
        new("source", "What the sheet of movements is called.", "string", Example: "web-shop", Default: "\"movements\""),
        new("wholeDays", "With true, the bench book has whole days, packing and books included: then benchShare can be found.", "boolean",
            Default: "false"),
        new("countsAsMade", "With true, good pieces of the last step in the bench book count as made.", "boolean", Default: "false"),
        .. LogSheetQuery.ParametersOf(LogFields.OfMovements),
        .. LogSheetQuery.ParametersOf(LogFields.OfBench, Bench, " in the bench book"),
        QueryParameters.AsOf,
        QueryParameters.Workings,
    ];

    /// <summary>The first name of a parameter of a sheet.</summary>
    /// <param name="part">The sheet.</param>
    public static string Prefix(string part) => part == BenchPart ? Bench : "";

    public static EvidenceQuery Read(QueryValues values)
    {
        var read = new EvidenceQuery
        {
            AsOf = values.Time("asOf"),
            Against = values.Text("against"),
            From = values.Date("from"),
            To = values.Date("to"),
            Level = values.Number("level", new ShareAttribute { Minimum = "0.5", Maximum = "0.99" }) ?? EvidenceChoices.UsualLevel,
            At = values.IntegerOrNull("at", 1, MostPieces),
            Run = values.Integer("run", 1, MostPieces, EvidenceChoices.UsualRun),
            Workings = values.Boolean("workings"),
            MovementSource = values.Text("source") ?? MovementsPart,
            Movements = LogSheetQuery.Of(values, LogFields.OfMovements),
            BenchSheet = LogSheetQuery.Of(values, LogFields.OfBench, Bench),
            BenchSource = new LogSource(BenchPart, values.Boolean("wholeDays"), values.Boolean("countsAsMade")),
        };
        if (read.To < read.From)
            values.Add("to", FaultCodes.OutOfOrder, "to must not be before from.");
        return read;
    }
}
