using System.Text;
using System.Text.Unicode;

namespace PriceFloor.Api.Sheets;

/// <summary>Shared rules for the text of sheets: positions in it, and how a cell may begin.</summary>
internal static class SheetText
{
    /// <summary>
    /// Whether a text is written with a quote before it: it would run as a formula, or it already begins with such a quote. So removing one quote
    /// when it is read gives every text back.
    /// </summary>
    public static bool IsDefused(ReadOnlySpan<byte> text) => text.TrimStart((byte)'\'') is [var first, ..] && RunsAsFormula(first);

    /// <summary>The text with a quote before it if it is written so.</summary>
    public static string Defused(string text) => IsDefused(Encoding.UTF8.GetBytes(text)) ? "'" + text : text;

    /// <summary>Spreadsheets run a cell that begins like this as a formula.</summary>
    private static bool RunsAsFormula(byte first) =>
        first is (byte)'=' or (byte)'+' or (byte)'-' or (byte)'@' or (byte)'\t' or (byte)'\r' or (byte)'\n';

    /// <summary>Line and column (in characters, from 1) of a byte, if the bytes begin a line.</summary>
    public static (long Line, long Column) Place(ReadOnlySpan<byte> bytes, int at, long line)
    {
        var before = bytes[..at];
        var column = before[(before.LastIndexOfAny((byte)'\r', (byte)'\n') + 1)..];
        return (line + CountBreaks(before), 1 + Characters(column));
    }

    public static int CountBreaks(ReadOnlySpan<byte> bytes) => bytes.Count((byte)'\n') + bytes.Count((byte)'\r') - bytes.Count("\r\n"u8);

    /// <summary>The position of the first bytes that are not UTF-8.</summary>
    public static int FirstInvalid(ReadOnlySpan<byte> bytes)
    {
        var at = 0;
        while (at < bytes.Length && Rune.DecodeFromUtf8(bytes[at..], out _, out var length) == System.Buffers.OperationStatus.Done)
            at += length;
        return at;
    }

    /// <summary>The same in UTF-8: invalid bytes become the replacement character.</summary>
    public static ReadOnlySpan<byte> Readable(ReadOnlySpan<byte> bytes) =>
        Utf8.IsValid(bytes) ? bytes : Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(bytes));

    private static int Characters(ReadOnlySpan<byte> bytes)
    {
        var count = 0;
        foreach (var one in bytes)
            count += (one & 0xC0) == 0x80 ? 0 : 1;
        return count;
    }
}
