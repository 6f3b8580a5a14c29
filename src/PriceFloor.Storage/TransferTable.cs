using System.Text.Json;

namespace PriceFloor.Storage;

/// <summary>A table in an export: a line for each row, an object with a property for each column.</summary>
/// <param name="Label">The name of its lines.</param>
/// <param name="Table">Its name.</param>
/// <param name="Columns">Its columns by what they hold: # a whole number, $ a text, * bytes; the first ones are its order.</param>
/// <param name="Keys">How many columns its order takes.</param>
internal sealed record TransferTable(string Label, string Table, IReadOnlyList<string> Columns, int Keys)
{
    /// <summary>Every store has one row of it, which an import replaces.</summary>
    public const string LogSecret = "log_secret";

    /// <summary>All of them, in the order of an export: what others refer to comes first.</summary>
    public static readonly IReadOnlyList<TransferTable> All =
    [
        new("revision", "revision", ["#position", "$kind", "$key", "#number", "#saved_at", "$saved_by", "$body"], 1),
        new("reference", "reference", ["$from_kind", "$from_key", "$to_kind", "$to_key"], 4),
        new("key", "access_key",
        [
            "$name", "*hash", "$scopes", "#created_at", "#expires_at", "$profiles", "#last_used", "*previous_hash", "#previous_until",
        ], 1),
        new("event", "event", ["#position", "#at", "$by", "$kind", "$name", "$what"], 1),
        new("name", "name", ["#id", "$kind", "$key"], 1),
        new("logSecret", LogSecret, ["*secret"], 1),
        new("logSource", "log_source", ["#source", "#whole_days", "#counts_as_made"], 1),
        new("logBatch", "log_batch", ["#id", "$list", "#at", "$by", "#last"], 1),
        new("movement", "movement",
        [
            "#position", "#source", "*ref", "#design", "#day", "#what", "#place", "#currency", "#pieces", "#paid", "#listed", "#fees",
            "#shipping_charged", "#shipping_cost", "#stall", "#grade", "#resale", "#piece", "*order_mark", "#batch", "#ended",
        ], 1),
        new("bench", "bench", ["#position", "#source", "*ref", "#design", "#day", "#step", "#started", "#good", "#minutes", "#batch", "#ended"], 1),
    ];

    /// <summary>Whether its order is one whole number, so it is read in pages.</summary>
    public bool HasPages => Keys == 1 && Columns[0][0] == '#';

    /// <summary>The columns as SQL names them.</summary>
    public IReadOnlyList<string> Names { get; } = [.. Columns.Select(column => column[1..])];

    /// <summary>The columns of a question.</summary>
    public string Selected => string.Join(", ", Names);

    /// <summary>The property of a column in a line: saved_at is savedAt.</summary>
    public static string PropertyOf(string column) => JsonNamingPolicy.CamelCase.ConvertName(
        string.Concat(column[1..].Split('_').Select((part, n) => n == 0 ? part : char.ToUpperInvariant(part[0]) + part[1..])));
}
