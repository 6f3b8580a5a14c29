using System.Buffers.Binary;
using System.Globalization;
using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>The present row of an answer.</summary>
internal sealed class PostgresRow(NpgsqlDataReader reader) : Row
{
    public override long Number(int column) => NumberOrNull(column) ?? 0;

    public override long? NumberOrNull(int column) =>
        reader.IsDBNull(column) ? null : Convert.ToInt64(reader.GetValue(column), CultureInfo.InvariantCulture);

    public override string? Text(int column) => reader.IsDBNull(column) ? null : reader.GetString(column);

    public override byte[]? Bytes(int column) => reader.IsDBNull(column) ? null : reader.GetFieldValue<byte[]>(column);

    public override ulong? EightBytes(int column) =>
        Bytes(column) is { } bytes ? BinaryPrimitives.ReadUInt64BigEndian(bytes) : null;
}
