using System.Text;

namespace PriceFloor.Api.Sheets;

/// <summary>The first row of a sheet: the names of its columns, and its bytes as they came.</summary>
public sealed class SheetHeader
{
    private readonly byte[][] _fields;

    private SheetHeader(byte[][] fields, string[] names, byte[] lineEnd, bool hasMark) =>
        (_fields, Names, LineEnd, HasMark) = (fields, names, lineEnd, hasMark);

    /// <summary>Names without quotes and without the blanks around them.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>The header's own line end; empty if the sheet is only a header.</summary>
    public ReadOnlyMemory<byte> LineEnd { get; }

    /// <summary>Whether the sheet began with a byte order mark.</summary>
    public bool HasMark { get; }

    public int Count => _fields.Length;

    /// <summary>A name as it came, with its quotes.</summary>
    public ReadOnlySpan<byte> Field(int index) => _fields[index];

    /// <summary>What to say of a header that seems to be in the other dialect: one column whose name has the other separator in it.</summary>
    public string OtherThan(SheetDialect dialect) =>
        Count > 1 ? ""
        : Names[0].Contains('\t', StringComparison.Ordinal) ? "; the columns are separated by tabs here: save it as CSV with commas between them"
        : !Names[0].Contains(dialect == SheetDialect.Comma ? ';' : ',', StringComparison.Ordinal) ? ""
        : dialect == SheetDialect.Comma ? "; a sheet with semicolons between its columns is sent with dialect=semicolon"
        : "; a sheet with commas between its columns is sent without dialect=semicolon";

    internal static SheetHeader Of(SheetRow row, bool hasMark)
    {
        var fields = new byte[row.Count][];
        var names = new string[row.Count];
        for (var index = 0; index < row.Count; index++)
            (fields[index], names[index]) = (row.Field(index).ToArray(), Encoding.UTF8.GetString(row.Value(index)).Trim());
        return new(fields, names, row.LineEnd.ToArray(), hasMark);
    }
}
