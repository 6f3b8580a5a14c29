using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;
using PriceFloor.Statements;

namespace PriceFloor.Api.LogLines;

/// <summary>How a sheet of lines is written, by parameters: its columns, dates and words, and what a line is that does not say it.</summary>
internal static class LogSheetQuery
{
    private const int WordsLength = 1000;

    /// <summary>The parameters of a sheet with lines of these fields.</summary>
    /// <param name="fields">The fields.</param>
    /// <param name="prefix">What their names begin with, where a request has two sheets.</param>
    /// <param name="place">Which of them it is, in words: " in the bench book".</param>
    public static IReadOnlyList<QueryParameter> ParametersOf(IReadOnlyList<LogField> fields, string prefix = "", string place = "") =>
    [
        .. fields.Contains(LogField.What) ? OfMovements : [],
        new(prefix + "dateOrder", $"How dates are written{place}. If absent: as a line proves; ISO 8601 and English month names are always read.",
            "string", Example: "day-month-year"),
        new(prefix + "cancelled", $"Words of the status column{place}, with commas between: their lines count in nothing and withdraw a line that "
            + "was stored before.", "string", Example: "cancelled,refunded"),
        .. fields.Select(field => new QueryParameter(prefix + field.Parameter(), $"Heading of the column with {Words(field)}{place}.", "string",
            Default: $"\"{field.Name()}\"", Example: "My column")),
        SheetQuery.Dialect with { Name = prefix + SheetQuery.Dialect.Name },
    ];

    public static LogSheet Of(QueryValues values, IReadOnlyList<LogField> fields, string prefix = "")
    {
        var hasWhat = fields.Contains(LogField.What);
        var columns = new Dictionary<LogField, string>();
        foreach (var field in fields)
            if (values.Text(prefix + field.Parameter(), StatementLayout.ColumnLength) is { } heading)
                columns.Add(field, heading);
        return new LogSheet
        {
            What = (hasWhat ? values.EnumValue<MovementKind>("what") : null) ?? MovementKind.Sold,
            Channel = hasWhat ? values.Text("channel") : null,
            DateOrder = values.EnumValue<DateOrder>(prefix + "dateOrder"),
            Cancelled = (values.Text(prefix + "cancelled", WordsLength) ?? "")
                .Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries),
            Semicolon = SheetQuery.DialectOf(values, prefix) == SheetDialect.Semicolon,
            Columns = columns,
        };
    }

    private static IReadOnlyList<QueryParameter> OfMovements =>
    [
        new("channel", "Key of the channel of lines that do not say it.", "string", Example: "web"),
        new("what", "What a line is that does not say so.", "string", Example: "made", Default: "\"sold\""),
    ];

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
