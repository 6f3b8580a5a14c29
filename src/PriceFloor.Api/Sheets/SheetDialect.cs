using System.Buffers;

namespace PriceFloor.Api.Sheets;

/// <summary>How a sheet parts its fields and writes its decimals: the two habits of spreadsheets go together.</summary>
public sealed class SheetDialect
{
    /// <summary>Commas between fields, decimal points: RFC 4180.</summary>
    public static readonly SheetDialect Comma = new(',', '.');

    /// <summary>Semicolons between fields, decimal commas: what spreadsheets write where 1.5 is written 1,5.</summary>
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
