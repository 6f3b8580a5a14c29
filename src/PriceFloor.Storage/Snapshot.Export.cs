using System.Text.Encodings.Web;
using System.Text.Json;

namespace PriceFloor.Storage;

/// <summary>Everything that is stored, as lines of JSON, whatever the engine.</summary>
public partial class Snapshot
{
    private const int RowsAtOnce = 1000;

    private static readonly JsonWriterOptions s_lines = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>
    /// Writes everything but the last line, which says how many lines there are: the life first, then the rows of each table in order.
    /// </summary>
    /// <param name="write">Takes a line without its end.</param>
    public async ValueTask Export(Func<ReadOnlyMemory<byte>, ValueTask> write)
    {
        var above = await Whole("SELECT numbers_above FROM life");
        var life = await LifeName;
        await write(LineOf(line =>
        {
            line.WriteStartObject("life");
            line.WriteNumber("format", StoreImport.Format);
            line.WriteString("name", life);
            line.WriteNumber("numbersAbove", above);
            line.WriteEndObject();
        }));
        foreach (var table in TransferTable.All)
            await Export(table, write);
    }

    private async ValueTask Export(TransferTable table, Func<ReadOnlyMemory<byte>, ValueTask> write)
    {
        var order = string.Join(", ", table.Columns.Take(table.Keys).Select(column => column[1..]));
        for (long after = long.MinValue; ;)
        {
            var page = table.HasPages ? $" WHERE {order} > @after ORDER BY {order} LIMIT {RowsAtOnce}" : $" ORDER BY {order}";
            var lines = new List<byte[]>();
            await Session.Read($"SELECT {table.Selected} FROM {table.Table}{page}", table.HasPages ? [("@after", after)] : [], row =>
            {
                lines.Add(LineOf(line => WriteRow(line, table, row)));
                after = table.HasPages ? row.Number(0) : 0;
            });
            foreach (var line in lines)
                await write(line);
            if (!table.HasPages || lines.Count < RowsAtOnce)
                return;
        }
    }

    private static void WriteRow(Utf8JsonWriter line, TransferTable table, Row row)
    {
        line.WriteStartObject(table.Label);
        foreach (var (n, column) in table.Columns.Index())
        {
            line.WritePropertyName(TransferTable.PropertyOf(column));
            if (column[0] == '#' && row.NumberOrNull(n) is { } number)
                line.WriteNumberValue(number);
            else if (column[0] == '$' && row.Text(n) is { } text)
                line.WriteStringValue(text);
            else if (column[0] == '*' && row.Bytes(n) is { } bytes)
                line.WriteBase64StringValue(bytes);
            else
                line.WriteNullValue();
        }

        line.WriteEndObject();
    }

    private static byte[] LineOf(Action<Utf8JsonWriter> write)
    {
        using var bytes = new MemoryStream();
        using (var line = new Utf8JsonWriter(bytes, s_lines))
        {
            line.WriteStartObject();
            write(line);
            line.WriteEndObject();
        }

        return bytes.ToArray();
    }
}
