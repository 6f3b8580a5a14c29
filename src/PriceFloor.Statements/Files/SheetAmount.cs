using System.Globalization;

namespace PriceFloor.Statements.Files;

/// <summary>
/// Amounts as people's sheets write them: a sign before or behind, or parentheses for money that went out; thousands in groups of three only if
/// decimals follow, since 1,234 alone may be twelve hundred or one and a bit. The sign or code of a currency may be beside the number.
/// </summary>
/// <param name="DecimalMark">Point or comma; the other one may separate thousands.</param>
internal readonly record struct SheetAmount(char DecimalMark)
{
    private const int MostDigits = 18;
    private const char MinusSign = '\u2212';

    private char GroupMark => DecimalMark == '.' ? ',' : '.';

    /// <param name="cell">The cell.</param>
    /// <param name="own">The currency of the line, else that of the draft: its sign may be beside the amount.</param>
    /// <param name="amount">The amount.</param>
    /// <param name="code">The code of a currency that is beside the amount; null if there is none.</param>
    /// <returns>Why it cannot be read, or null.</returns>
    public LineFault? Read(ReadOnlySpan<char> cell, string? own, out decimal amount, out string? code)
    {
        amount = 0;
        cell = cell.Trim();
        var whole = cell.Length;
        var negative = TakesMinus(ref cell);
        var (isSigned, marked) = (cell.Length < whole, cell.Length);
        if (CurrencyMark.Take(ref cell, own, out code) is { } fault)
            return fault;
        if (!isSigned && cell.Length < marked) // the sign may be inside, as in $-12.50
            negative = TakesMinus(ref cell);
        Span<char> plain = stackalloc char[MostDigits + 1];
        if (!Plain(cell, plain, out var length))
            return LineFault.BadAmount;
        amount = decimal.Parse(plain[..length], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        amount = negative ? -amount : amount;
        return null;
    }

    /// <summary>Removes at most one sign; a second one stays and is not a digit.</summary>
    private static bool TakesMinus(ref ReadOnlySpan<char> cell)
    {
        var (negative, from, behind) = cell switch
        {
            ['(', .., ')'] => (true, 1, 1),
            ['-' or MinusSign, ..] => (true, 1, 0),
            ['+', ..] => (false, 1, 0),
            [.., '-' or MinusSign] => (true, 0, 1),
            _ => (false, 0, 0),
        };
        cell = cell[from..^behind].Trim();
        return negative;
    }

    /// <summary>Copies digits and a decimal point, or returns false.</summary>
    private bool Plain(ReadOnlySpan<char> text, Span<char> plain, out int length)
    {
        length = 0;
        var mark = text.IndexOf(DecimalMark);
        var whole = mark < 0 ? text : text[..mark];
        var decimals = mark < 0 ? [] : text[(mark + 1)..];
        if ((whole.IsEmpty && mark < 0) || (mark >= 0 && decimals.IsEmpty) || decimals.ContainsAnyExceptInRange('0', '9'))
            return false;
        if (whole.Contains(GroupMark) && (mark < 0 || !IsGrouped(whole)))
            return false;
        foreach (var character in whole)
        {
            if (character == GroupMark)
                continue;
            if (!char.IsAsciiDigit(character) || length == MostDigits)
                return false;
            plain[length++] = character;
        }
        if (length + decimals.Length > MostDigits)
            return false;
        if (mark < 0)
            return true;
        plain[length++] = '.';
        decimals.CopyTo(plain[length..]);
        length += decimals.Length;
        return true;
    }

    private bool IsGrouped(ReadOnlySpan<char> whole)
    {
        var first = whole.IndexOf(GroupMark);
        if (first is < 1 or > 3 || (whole.Length - first) % 4 != 0)
            return false;
        for (var i = first; i < whole.Length; i++)
            if (whole[i] == GroupMark != ((i - first) % 4 == 0))
                return false;
        return true;
    }
}
