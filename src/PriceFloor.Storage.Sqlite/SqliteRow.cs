using System.Buffers.Binary;
using System.Runtime.InteropServices;
using SQLitePCL;

namespace PriceFloor.Storage.Sqlite;

/// <summary>
/// The present row of a statement. Numbers are read by calls of the engine that take a few nanoseconds, where the package's own guard the
/// statement anew for each column: of a million lines that is seconds.
/// </summary>
/// <param name="statement">The statement, which stays open while its rows are read.</param>
internal sealed class SqliteRow(sqlite3_stmt statement) : Row
{
    private const string Engine = "e_sqlite3";

    private readonly nint _statement = statement.DangerousGetHandle();

    public override long Number(int column) => sqlite3_column_int64(_statement, column);

    public override long? NumberOrNull(int column) => Number(column) is not 0 and var number ? number : IsNull(column) ? null : 0;

    public override string? Text(int column) => IsNull(column) ? null : raw.sqlite3_column_text(statement, column).utf8_to_string();

    public override ulong? EightBytes(int column) => sqlite3_column_blob(_statement, column) is not 0 and var bytes ? Big(Marshal.ReadInt64(bytes)) : null;

    private static ulong Big(long number) => (ulong)(BitConverter.IsLittleEndian ? BinaryPrimitives.ReverseEndianness(number) : number);

    private bool IsNull(int column) => sqlite3_column_type(_statement, column) == raw.SQLITE_NULL;

    [DllImport(Engine), SuppressGCTransition, DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories | DllImportSearchPath.AssemblyDirectory)]
    private static extern long sqlite3_column_int64(nint statement, int column);

    [DllImport(Engine), SuppressGCTransition, DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories | DllImportSearchPath.AssemblyDirectory)]
    private static extern int sqlite3_column_type(nint statement, int column);

    [DllImport(Engine), SuppressGCTransition, DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories | DllImportSearchPath.AssemblyDirectory)]
    private static extern nint sqlite3_column_blob(nint statement, int column);
}
