using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Statements;

namespace PriceFloor.Api.LogLines;

/// <summary>Who sends lines, of which days, and how a sheet of them is written.</summary>
public sealed record LogBatchQuery
{
    private const int MostWords = 1000;

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
        .. fields.Contains(LogField.What) ? OfMovements : [],
        new("dateOrder", "How a sheet writes its dates. If absent: as a line of the sheet proves; ISO 8601 and English month names are always read.",
            "string", Example: "day-month-year"),
        new("cancelled", "Words of the status column, with commas between: their lines count in nothing and withdraw a line stored before.", "string",
            Example: "cancelled,refunded"),
        .. fields.Select(field => new QueryParameter(field.Parameter(), $"Heading of a sheet's column with {Words(field)}.", "string",
            Default: $"\"{field.Name()}\"", Example: "My column")),
        SheetQuery.Dialect,
    ];

    public static LogBatchQuery Read(QueryValues values, IReadOnlyList<LogField> fields)
    {
        var hasWhat = fields.Contains(LogField.What);
        var read = new LogBatchQuery
        {
            Source = values.Text("source"),
            From = values.Date("from"),
            To = values.Date("to"),
            WholeDays = Said(values, "wholeDays"),
            CountsAsMade = Said(values, "countsAsMade"),
            Sheet = new LogSheet
            {
                What = (hasWhat ? values.EnumValue<MovementKind>("what") : null) ?? MovementKind.Sold,
                Channel = hasWhat ? values.Text("channel") : null,
                DateOrder = values.EnumValue<DateOrder>("dateOrder"),
                Cancelled = (values.Text("cancelled", MostWords) ?? "")
                    .Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries),
                Semicolon = SheetQuery.DialectOf(values) == SheetDialect.Semicolon,
                Columns = ColumnsOf(values, fields),
            },
        };
        if (read.Source is { } source && !Keys.IsValid(source))
            values.Add("source", InputCodes.BadKey, $"source is {Keys.Rule}.");
        if (read.From is null != read.To is null)
            values.Add(read.From is null ? "from" : "to", FaultCodes.Required, "from and to go together: the first and the last day.");
        if (read.To < read.From)
            values.Add("to", FaultCodes.OutOfOrder, "to must not be before from.");
        return read;
    }

    private static IEnumerable<QueryParameter> OfMovements =>
    [
        new("channel", "Key of the channel of lines that do not say it.", "string", Example: "web"),
        new("what", "What a line is that does not say so.", "string", Example: "made", Default: "\"sold\""),
    ];

    private static bool? Said(QueryValues values, string name) => values.Text(name) is null ? null : values.Boolean(name);

    private static Dictionary<LogField, string> ColumnsOf(QueryValues values, IReadOnlyList<LogField> fields)
    {
        var columns = new Dictionary<LogField, string>();
        foreach (var field in fields)
            if (values.Text(field.Parameter(), StatementLayout.ColumnLength) is { } heading)
                columns.Add(field, heading);
        return columns;
    }

    private static string Words(LogField field) => field switch
    {
        LogField.On => "the day",
        LogField.Ref => "the source's own id of each line",
        LogField.What => "what happened: made, sold, ...",
        LogField.Sku => "the design's key or alias",
        LogField.Channel => "the channel's key",
        LogField.Pieces => "how many; negative pieces came back",
        LogField.Price => "what was paid for one piece",
        LogField.LineTotal => "what was paid for all pieces of the line",
        LogField.Listed => "what was asked for one piece",
        LogField.Order => "the order's id",
        LogField.Discount => "what was taken off the whole order",
        LogField.Fees => "the fees of the whole order",
        LogField.ShippingCharged => "the shipping that the order's buyer paid",
        LogField.ShippingCost => "what shipping the order cost",
        LogField.Grade => "good or second",
        LogField.Stall => "the fair's name",
        LogField.Piece => "the piece's serial",
        LogField.Resale => "whether what came back can be sold again",
        LogField.Status => "the shop's word for what became of the line",
        LogField.Currency => "the currency",
        LogField.Step => "the step's name",
        LogField.Started => "pieces started",
        LogField.Good => "pieces that came out good",
        _ => "minutes for the whole batch",
    };
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
