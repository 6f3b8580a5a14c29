using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.LogLines;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;

namespace PriceFloor.Api.Evidence;

/// <summary>How to read the two sheets, and what is asked of their lines.</summary>
public sealed record EvidenceQuery : IQuery<EvidenceQuery>
{
    /// <summary>The names of the sheets, which are their sources if the caller names none.</summary>
    public const string MovementsPart = "movements", BenchPart = "bench";

    private const string Bench = "bench.";

    public DateTimeOffset? AsOf { get; private init; }

    /// <summary>The key of the profile whose designs are asked about; null: all that the key may see.</summary>
    public string? Against { get; private init; }

    public AskedOfLines Asked { get; private init; } = new();

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
        .. AskedOfLines.Parameters,
        .. AskedOfLines.OfLearning,
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
        return new EvidenceQuery
        {
            AsOf = values.Time("asOf"),
            Against = values.Text("against"),
            Asked = AskedOfLines.Of(values, withLearning: true),
            Workings = values.Boolean("workings"),
            MovementSource = values.Text("source") ?? MovementsPart,
            Movements = LogSheetQuery.Of(values, LogFields.OfMovements),
            BenchSheet = LogSheetQuery.Of(values, LogFields.OfBench, Bench),
            BenchSource = new LogSource(BenchPart, values.Boolean("wholeDays"), values.Boolean("countsAsMade")),
        };
    }
}
