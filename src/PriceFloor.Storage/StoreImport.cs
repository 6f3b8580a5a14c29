using System.Globalization;
using System.Text.Json;

namespace PriceFloor.Storage;

/// <summary>Puts an export into a store in which nothing was ever stored, within one transaction.</summary>
/// <param name="writing">The transaction.</param>
public sealed class StoreImport(Writing writing)
{
    /// <summary>The format of exports.</summary>
    internal const int Format = 1;

    /// <summary>How many rows go to the engine at once.</summary>
    private const int Together = 500;

    private readonly List<object?[]> _rows = [];
    private long? _numbersAbove;
    private int _line;
    private int _table;

    /// <summary>Whether nothing was ever stored: no document, no key, no line of the log.</summary>
    public static async ValueTask<bool> IsFor(Snapshot snapshot) =>
        await snapshot.IsEmpty && (await snapshot.Keys).Count == 0 && await snapshot.LogPosition() is { Movements: 0, Bench: 0 };

    /// <summary>Adds a line but the last. Throws an <see cref="ImportException"/> for one that is not as an export has it.</summary>
    public ValueTask Add(ReadOnlyMemory<byte> line) => writing.WriteLog((session, _, _) => Add(session, line));

    /// <summary>Ends with the heads of documents and a life whose numbers are above all that was given, and checks everything.</summary>
    /// <param name="faultOf">The fault of a document of that kind and text; null if there is none.</param>
    public ValueTask Finish(Func<string, string, string?> faultOf) => writing.WriteLog((session, _, _) => Finish(session, faultOf));

    private async ValueTask Add(Session session, ReadOnlyMemory<byte> line)
    {
        _line++;
        try
        {
            using var read = JsonDocument.Parse(line);
            var only = read.RootElement.EnumerateObject().Single();
            if (_line == 1)
                ReadLife(only);
            else
                await Take(session, only);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or KeyNotFoundException or FormatException)
        {
            throw Refused("is not as an export has it.");
        }
    }

    /// <summary>A line of another table than the one before sends the rows of that one.</summary>
    private async ValueTask Take(Session session, JsonProperty line)
    {
        if (TransferTable.All[_table].Label != line.Name || _rows.Count == Together)
            await Send(session, before: 1);
        MoveTo(line.Name);
        _rows.Add(RowOf(line.Value));
    }

    /// <param name="session">The transaction.</param>
    /// <param name="before">How many lines were read after those of these rows.</param>
    private async ValueTask Send(Session session, int before)
    {
        if (_rows.Count == 0)
            return;
        try
        {
            var table = TransferTable.All[_table];
            if (table.Table == TransferTable.LogSecret)
                await session.Execute($"DELETE FROM {TransferTable.LogSecret}");
            await session.Insert(table.Table, table.Names, _rows);
            _rows.Clear();
        }
        catch (StoreTroubleException e) when (e.Trouble == StoreTrouble.Unexpected)
        {
            _line -= before + _rows.Count - 1 - (e.Row ?? _rows.Count - 1);
            throw Refused("repeats or contradicts an earlier line."); // a constraint of the tables
        }
    }

    private void ReadLife(JsonProperty only)
    {
        if (only.Name != "life" || only.Value.GetProperty("format").GetInt32() != Format)
            throw Refused($"is not the life of an export of format {Format}.");
        _numbersAbove = only.Value.GetProperty("numbersAbove").GetInt64();
    }

    /// <summary>To the table of a line: tables come in their order.</summary>
    private void MoveTo(string label)
    {
        while (_table < TransferTable.All.Count && TransferTable.All[_table].Label != label)
            _table++;
        if (_table == TransferTable.All.Count)
            throw Refused("is of a table that is unknown, or came before.");
    }

    private object?[] RowOf(JsonElement row)
    {
        var columns = TransferTable.All[_table].Columns;
        if (row.EnumerateObject().Count() != columns.Count)
            throw Refused("has more or fewer properties than an export.");
        return [.. columns.Select(column => Value(row.GetProperty(TransferTable.PropertyOf(column)), column[0]))];
    }

    private static object? Value(JsonElement value, char kind) => value.ValueKind == JsonValueKind.Null ? null
        : kind switch { '#' => value.GetInt64(), '$' => value.GetString(), _ => value.GetBytesFromBase64() };

    private async ValueTask Finish(Session session, Func<string, string, string?> faultOf)
    {
        if (_numbersAbove is not { } above)
            throw Refused("is missing: there is no life.");
        await Send(session, before: 0);
        await session.Execute(
            """
            INSERT INTO head (kind, key, position, deleted)
            SELECT r.kind, r.key, r.position, CASE WHEN r.body IS NULL THEN 1 ELSE 0 END FROM revision r
            WHERE r.number = (SELECT max(p.number) FROM revision p WHERE p.kind = r.kind AND p.key = r.key)
            """);
        above = long.Max(above, await StoreEpoch.HighestStored(session)) + StoreEpoch.Leap; // where it came from may go on giving numbers
        await session.Execute("UPDATE life SET numbers_above = @above", new { above });
        var report = await StoreChecking.Of(session, 0, hasLog: true, [], (faultOf, null));
        if (report.Faults.Count > 0)
            throw new ImportException($"What the export has together is not a sound store: {report.Faults[0]}");
    }

    private ImportException Refused(string why) =>
        new(string.Create(CultureInfo.InvariantCulture, $"Line {long.Max(_line, 1)} {why}")) { Line = long.Max(_line, 1) };
}

/// <summary>An export cannot be imported; nothing of it was stored.</summary>
public sealed class ImportException(string message) : Exception(message)
{
    /// <summary>The line at fault; 0 if it is about the whole.</summary>
    public long Line { get; init; }
}
