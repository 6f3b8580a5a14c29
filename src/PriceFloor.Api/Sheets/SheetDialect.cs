using System.Buffers;

namespace PriceFloor.Api.Sheets;

/// <summary>The separator of fields and the decimal mark of a sheet: in spreadsheets, the two go together.</summary>
public sealed class SheetDialect
{
    /// <summary>Commas between fields, decimal points: RFC 4180.</summary>
    public static readonly SheetDialect Comma = new(',', '.');

    /// <summary>Semicolons between fields, decimal commas: what spreadsheets write in countries that write 1.5 as 1,5.</summary>
    public static readonly SheetDialect Semicolon = new(';', ',');

    private SheetDialect(char separator, char decimalMark)
    {
        (Separator, DecimalMark) = ((byte)separator, decimalMark);
        EndsOfPlainField = SearchValues.Create([Separator, (byte)'\r', (byte)'\n', (byte)'"']);
    }

    public byte Separator { get; }

    public char DecimalMark { get; }

    internal SearchValues<byte> EndsOfPlainField { get; }
}
