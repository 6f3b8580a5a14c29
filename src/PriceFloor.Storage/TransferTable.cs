using System.Text.Json;

namespace PriceFloor.Storage;

/// <summary>A table in an export: a line for each row, an object with a property for each column.</summary>
/// <param name="Label">The name of its lines.</param>
/// <param name="Columns">Its columns by what they hold: # a whole number, $ a text, * bytes; the first ones are its order.</param>
/// <param name="Keys">How many columns its order takes.</param>
/// <param name="Insert">Inserts a row.</param>
internal sealed record TransferTable(string Label, string Table, IReadOnlyList<string> Columns, int Keys,
    Func<Session, TransferRow, ValueTask<int>> Insert)
{
    /// <summary>All of them, in the order of an export: what others refer to comes first.</summary>
    public static readonly IReadOnlyList<TransferTable> All =
    [
        new("revision", "revision", ["#position", "$kind", "$key", "#number", "#saved_at", "$saved_by", "$body"], 1,
            (session, row) => session.Execute(
                "INSERT INTO revision (position, kind, key, number, saved_at, saved_by, body) VALUES (@a, @b, @c, @d, @e, @f, @g)",
            new { a = row.Number(0), b = row.Text(1), c = row.Text(2), d = row.Number(3), e = row.Number(4), f = row.Text(5), g = row.Text(6) })),
        new("reference", "reference", ["$from_kind", "$from_key", "$to_kind", "$to_key"], 4, (session, row) => session.Execute(
            "INSERT INTO reference (from_kind, from_key, to_kind, to_key) VALUES (@a, @b, @c, @d)",
            new { a = row.Text(0), b = row.Text(1), c = row.Text(2), d = row.Text(3) })),
        new("key", "access_key",
        [
            "$name", "*hash", "$scopes", "#created_at", "#expires_at", "$profiles", "#last_used", "*previous_hash", "#previous_until",
        ], 1, (session, row) => session.Execute(
                "INSERT INTO access_key (name, hash, scopes, created_at, expires_at, profiles, last_used, previous_hash, previous_until) "
                + "VALUES (@a, @b, @c, @d, @e, @f, @g, @h, @i)",
                new
                {
                    a = row.Text(0), b = row.Bytes(1), c = row.Text(2), d = row.Number(3), e = row.Number(4), f = row.Text(5), g = row.Number(6),
                    h = row.Bytes(7), i = row.Number(8),
                })),
        new("event", "event", ["#position", "#at", "$by", "$kind", "$name", "$what"], 1, (session, row) => session.Execute(
            "INSERT INTO event (position, at, by, kind, name, what) VALUES (@a, @b, @c, @d, @e, @f)",
            new { a = row.Number(0), b = row.Number(1), c = row.Text(2), d = row.Text(3), e = row.Text(4), f = row.Text(5) })),
        new("name", "name", ["#id", "$kind", "$key"], 1, (session, row) => session.Execute(
            "INSERT INTO name (id, kind, key) VALUES (@a, @b, @c)", new { a = row.Number(0), b = row.Text(1), c = row.Text(2) })),
        new("logSecret", "log_secret", ["*secret"], 1, (session, row) => session.Execute(
            "UPDATE log_secret SET secret = @a", new { a = row.Bytes(0) })),
        new("logSource", "log_source", ["#source", "#whole_days", "#counts_as_made"], 1, (session, row) => session.Execute(
            "INSERT INTO log_source (source, whole_days, counts_as_made) VALUES (@a, @b, @c)",
            new { a = row.Number(0), b = row.Number(1), c = row.Number(2) })),
        new("logBatch", "log_batch", ["#id", "$list", "#at", "$by", "#last"], 1, (session, row) => session.Execute(
            "INSERT INTO log_batch (id, list, at, by, last) VALUES (@a, @b, @c, @d, @e)",
            new { a = row.Number(0), b = row.Text(1), c = row.Number(2), d = row.Text(3), e = row.Number(4) })),
        new("movement", "movement",
        [
            "#position", "#source", "*ref", "#design", "#day", "#what", "#place", "#currency", "#pieces", "#paid", "#listed", "#fees",
            "#shipping_charged", "#shipping_cost", "#stall", "#grade", "#resale", "#piece", "*order_mark", "#batch", "#ended",
        ], 1, (session, row) => session.Execute(
            "INSERT INTO movement (position, source, ref, design, day, what, place, currency, pieces, paid, listed, fees, shipping_charged, "
            + "shipping_cost, stall, grade, resale, piece, order_mark, batch, ended) "
            + "VALUES (@a, @b, @c, @d, @e, @f, @g, @h, @i, @j, @k, @l, @m, @n, @o, @p, @q, @r, @s, @t, @u)",
            new
            {
                a = row.Number(0), b = row.Number(1), c = row.Bytes(2), d = row.Number(3), e = row.Number(4), f = row.Number(5), g = row.Number(6),
                h = row.Number(7), i = row.Number(8), j = row.Number(9), k = row.Number(10), l = row.Number(11), m = row.Number(12),
                n = row.Number(13), o = row.Number(14), p = row.Number(15), q = row.Number(16), r = row.Number(17), s = row.Bytes(18),
                t = row.Number(19), u = row.Number(20),
            })),
        new("bench", "bench", ["#position", "#source", "*ref", "#design", "#day", "#step", "#started", "#good", "#minutes", "#batch", "#ended"], 1,
            (session, row) => session.Execute(
                "INSERT INTO bench (position, source, ref, design, day, step, started, good, minutes, batch, ended) "
                + "VALUES (@a, @b, @c, @d, @e, @f, @g, @h, @i, @j, @k)",
                new
                {
                    a = row.Number(0), b = row.Number(1), c = row.Bytes(2), d = row.Number(3), e = row.Number(4), f = row.Number(5),
                    g = row.Number(6), h = row.Number(7), i = row.Number(8), j = row.Number(9), k = row.Number(10),
                })),
    ];

    /// <summary>Whether its order is one whole number, so it is read in pages.</summary>
    public bool HasPages => Keys == 1 && Columns[0][0] == '#';

    /// <summary>The columns as SQL names them.</summary>
    public string Selected => string.Join(", ", Columns.Select(column => column[1..]));

    /// <summary>The property of a column in a line: saved_at is savedAt.</summary>
    public static string PropertyOf(string column) => JsonNamingPolicy.CamelCase.ConvertName(
        string.Concat(column[1..].Split('_').Select((part, n) => n == 0 ? part : char.ToUpperInvariant(part[0]) + part[1..])));
}

/// <summary>A row of an import: its columns in order.</summary>
internal sealed class TransferRow(IReadOnlyList<object?> columns)
{
    public long? Number(int column) => (long?)columns[column];

    public string? Text(int column) => (string?)columns[column];

    public byte[]? Bytes(int column) => (byte[]?)columns[column];
}
