using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Evidence.Sheets;

namespace PriceFloor.Api.LogLines;

/// <summary>Who sends lines, of which days, and how a sheet of them is written.</summary>
public sealed record LogBatchQuery
{
    public string? Source { get; private init; }

    /// <summary>With <see cref="To"/>: the request has all that the source has for these days.</summary>
    public DateOnly? From { get; private init; }

    public DateOnly? To { get; private init; }

    public bool? WholeDays { get; private init; }

    public bool? CountsAsMade { get; private init; }

    public LogSheet Sheet { get; private init; } = new();

    public bool IsWhole => From is not null;

    public LogWindow Window => new(From, To);

    /// <summary>The parameters of a list with these fields.</summary>
    public static IReadOnlyList<QueryParameter> ParametersOf(IReadOnlyList<LogField> fields) =>
    [
        new("source", "Who sends the lines: a name of your own for the shop or book. A sheet needs it; a line of JSON may say its own.", "string",
            Example: "web-shop"),
        new("from", "With to: this is all that the source has from this day; what it no longer holds is withdrawn, all or nothing.", "string",
            "date", "2027-03-01"),
        new("to", "The last of these days.", "string", "date", "2027-03-31"),
        new("wholeDays", "Says of the source whether its minutes are all the minutes of its days. Kept as last said.", "boolean"),
        new("countsAsMade", "Says of the source whether good pieces of a design's last step are made pieces. Kept as last said.", "boolean"),
        .. LogSheetQuery.ParametersOf(fields),
    ];

    public static LogBatchQuery Read(QueryValues values, IReadOnlyList<LogField> fields)
    {
        var read = new LogBatchQuery
        {
            Source = values.Text("source"),
            From = values.Date("from"),
            To = values.Date("to"),
            WholeDays = Said(values, "wholeDays"),
            CountsAsMade = Said(values, "countsAsMade"),
            Sheet = LogSheetQuery.Of(values, fields),
        };
        if (read.Source is { } source && !Keys.IsValid(source))
            values.Add("source", InputCodes.BadKey, $"source is {Keys.Rule}.");
        if (read.From is null != read.To is null)
            values.Add(read.From is null ? "from" : "to", FaultCodes.Required, "from and to go together: the first and the last day.");
        if (read.To < read.From)
            values.Add("to", FaultCodes.OutOfOrder, "to must not be before from.");
        return read;
    }

    private static bool? Said(QueryValues values, string name) => values.Text(name) is null ? null : values.Boolean(name);
}

/// <summary>The query of movements that are sent.</summary>
public sealed record MovementBatchQuery(LogBatchQuery Batch) : IQuery<MovementBatchQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => LogBatchQuery.ParametersOf(LogFields.OfMovements);

    public static MovementBatchQuery Read(QueryValues values) => new(LogBatchQuery.Read(values, LogFields.OfMovements));
}

/// <summary>The query of bench entries that are sent.</summary>
public sealed record BenchBatchQuery(LogBatchQuery Batch) : IQuery<BenchBatchQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters => LogBatchQuery.ParametersOf(LogFields.OfBench);

    public static BenchBatchQuery Read(QueryValues values) => new(LogBatchQuery.Read(values, LogFields.OfBench));
}
