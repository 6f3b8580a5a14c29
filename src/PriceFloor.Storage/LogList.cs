namespace PriceFloor.Storage;

/// <summary>One of the two lists of the log: its table, and its columns beside position, batch and ended.</summary>
internal sealed record LogList(string Table, IReadOnlyList<string> Columns)
{
    public static readonly LogList Movements = new("movement", ["source", "ref", "design", "day", "what", "place", "currency", "pieces", "paid",
        "listed", "fees", "shipping_charged", "shipping_cost", "stall", "grade", "resale", "piece", "order_mark"]);

    public static readonly LogList Bench = new("bench", ["source", "ref", "design", "day", "step", "started", "good", "minutes"]);

    public static readonly IReadOnlyList<LogList> All = [Movements, Bench];

    /// <summary>The columns for a temporary table.</summary>
    public IEnumerable<TemporaryColumn> Temporary => Columns.Select(column => new TemporaryColumn(column, column is "ref" or "order_mark"));

    /// <summary>What a batch is of while its lines are coming: until all are there, none is.</summary>
    public string Coming => Table + "+";

    /// <summary>The list of a type of lines.</summary>
    public static LogList Of<T>() where T : LogLine => typeof(T) == typeof(MovementLine) ? Movements : Bench;

    /// <summary>The columns with commas between, each after a prefix.</summary>
    public string Listed(string prefix = "") => string.Join(", ", Columns.Select(column => prefix + column));

    /// <summary>Whether two rows say the same.</summary>
    public string Same(string one, string other) =>
        string.Join(" AND ", Columns.Skip(2).Select(column => $"{one}.{column} IS NOT DISTINCT FROM {other}.{column}"));
}
