namespace PriceFloor.Storage;

/// <summary>Lines as rows of numbers, in the order of the columns of <see cref="LogList"/>.</summary>
internal static class LogRows
{
    /// <summary>
    /// The row of a line: its place among those that are staged together, from 0 and from 1, its state so far, its columns, the last step.
    /// </summary>
    public static object?[] Of(int n, LogLine line, LogNames names) =>
    [
        (long)n, n + 1L, (long)LogState.Stored, .. line is MovementLine movement ? Of(movement, names) : Of((BenchLine)line, names),
        names[LogNames.Step, line.LastStep],
    ];

    private static object?[] Of(MovementLine line, LogNames names) =>
    [
        names[LogNames.Source, line.Source], line.Ref, names[LogNames.Design, line.Design], (long)line.Day, (long)line.What,
        names[LogNames.Channel, line.Place], names[LogNames.Currency, line.Currency], (long)line.Pieces, line.Paid, line.Listed, line.Fees,
        line.ShippingCharged, line.ShippingCost, names[LogNames.Stall, line.Stall], (long?)line.Grade, (long?)line.Resale,
        names[LogNames.Piece, line.Piece], line.OrderMark,
    ];

    private static object?[] Of(BenchLine line, LogNames names) =>
    [
        names[LogNames.Source, line.Source], line.Ref, names[LogNames.Design, line.Design], (long)line.Day, names[LogNames.Step, line.Step],
        (long?)line.Started, (long?)line.Good, line.Minutes,
    ];
}
