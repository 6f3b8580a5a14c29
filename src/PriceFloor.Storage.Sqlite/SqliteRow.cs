using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace PriceFloor.Storage.Sqlite;

/// <summary>
/// The present row of a statement. Columns are read by calls of the engine that take a few nanoseconds and never fail, where its package guards the
/// statement again for each column: of a million lines that is seconds.
/// </summary>
/// <param name="statement">The statement, which stays open while its rows are read.</param>
internal sealed class SqliteRow(nint statement) : Row
{
    private const string Engine = "e_sqlite3";
    private const int Null = 5; // SQLITE_NULL
    private const DllImportSearchPath Beside = DllImportSearchPath.SafeDirectories | DllImportSearchPath.AssemblyDirectory;

    public override long Number(int column) => sqlite3_column_int64(statement, column);

    public override long? NumberOrNull(int column) => Number(column) is not 0 and var number ? number : IsNull(column) ? null : 0;

    public override string? Text(int column) =>
        IsNull(column) ? null : Marshal.PtrToStringUTF8(sqlite3_column_text(statement, column), sqlite3_column_bytes(statement, column));

    public override byte[]? Bytes(int column)
    {
        if (IsNull(column))
            return null;
        var (start, bytes) = (sqlite3_column_blob(statement, column), new byte[sqlite3_column_bytes(statement, column)]);
        if (bytes.Length > 0) // of none there is no start
            Marshal.Copy(start, bytes, 0, bytes.Length);
        return bytes;
    }

    public override ulong? EightBytes(int column) =>
        sqlite3_column_blob(statement, column) is not 0 and var bytes ? BigEndian(Marshal.ReadInt64(bytes)) : null;

    private static ulong BigEndian(long number) => (ulong)(BitConverter.IsLittleEndian ? BinaryPrimitives.ReverseEndianness(number) : number);

    private bool IsNull(int column) => sqlite3_column_type(statement, column) == Null;

    [DllImport(Engine), SuppressGCTransition, DefaultDllImportSearchPaths(Beside)]
    private static extern long sqlite3_column_int64(nint statement, int column);

    [DllImport(Engine), SuppressGCTransition, DefaultDllImportSearchPaths(Beside)]
    private static extern int sqlite3_column_type(nint statement, int column);

    [DllImport(Engine), SuppressGCTransition, DefaultDllImportSearchPaths(Beside)]
    private static extern nint sqlite3_column_text(nint statement, int column);

    [DllImport(Engine), SuppressGCTransition, DefaultDllImportSearchPaths(Beside)]
    private static extern nint sqlite3_column_blob(nint statement, int column);

    /// <summary>How many bytes the text or blob has that was asked for last.</summary>
    [DllImport(Engine), SuppressGCTransition, DefaultDllImportSearchPaths(Beside)]
    private static extern int sqlite3_column_bytes(nint statement, int column);
}
