using System.Globalization;
using System.Text;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// Numbers in cells: the rule of <see cref="NumberText"/> with the dialect's decimal mark, and a hint on what to remove if a cell was formatted for
/// people ("$58.00", "1,234.00"). The service removes nothing itself: 1,5 must never become 15.
/// </summary>
public static class SheetNumber
{
    private const int Longest = 256;

    /// <summary>The number in a cell (<see cref="SheetRow.Cell"/>), or its fault: a code and a sentence.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="name">Its column.</param>
    /// <param name="field">The bounds that are checked here; null if they are checked with the record.</param>
    /// <param name="dialect">Its decimal mark.</param>
    /// <param name="meant">What the number is, if its bounds are not checked here: the hint for a percentage depends on it.</param>
    public static (decimal Value, Code? Code, string? Detail) Read(ReadOnlySpan<byte> cell, string name,
        NumberFieldAttribute? field, SheetDialect dialect, NumberFieldAttribute? meant = null)
    {
        Span<char> room = stackalloc char[Longest];
        if (cell.IsEmpty)
            return (0, FaultCodes.Required, $"{name} is empty.");
        var text = cell.Length <= Longest ? room[..Encoding.UTF8.GetChars(cell, room)] : Encoding.UTF8.GetString(cell).AsSpan();
        if ((field ?? meant) is ShareAttribute && text is [.., '%'] && OfPercentage(text, name, field, dialect) is { } percentage)
            return percentage;
        var read = NumberText.Read(text, name, field, dialect.DecimalMark);
        return read.Code == InputCodes.NotANumber
            ? (0, read.Code, $"{name} is \"{Short(text)}\"; {WhatToWrite(text, field ?? meant, dialect)}")
            : read;
    }

    /// <summary>A share that a spreadsheet shows as a percentage: 1.69% is 0.0169, exactly. Null if no number is before the sign.</summary>
    private static (decimal Value, Code? Code, string? Detail)? OfPercentage(ReadOnlySpan<char> text, string name, NumberFieldAttribute? field,
        SheetDialect dialect)
    {
        var (percent, fault, _) = NumberText.Read(text[..^1].TrimEnd(), name, null, dialect.DecimalMark);
        if (fault is not null)
            return null;
        if (percent is < 0 or > 100)
            return (0, FaultCodes.OutOfRange, $"{name} is \"{Short(text)}\"; a share is at least 0% and at most 100%.");
        var share = Rounding.Trim(percent / 100).ToString(CultureInfo.InvariantCulture);
        return NumberText.Read(share, name, field, '.');
    }

    /// <summary>
    /// A percentage in the place of a share is no number with a sign too many: without its sign it would be a hundred times the share.
    /// </summary>
    private static string WhatToWrite(ReadOnlySpan<char> text, NumberFieldAttribute? field, SheetDialect dialect)
    {
        if (field is ShareAttribute && text.Contains('%'))
            return $"write it as a share, without the sign.{NumberText.OfPercentage(text, field, dialect.DecimalMark)}";
        return text.ContainsAnyInRange('0', '9') ? WhatToStrip(text, dialect)
            : $"that is not a number; write digits, such as 1200{dialect.DecimalMark}50.";
    }

    private static string WhatToStrip(ReadOnlySpan<char> text, SheetDialect dialect)
    {
        var mark = dialect.DecimalMark;
        var (other, markName, otherName) = mark == '.' ? (',', "point", "comma") : ('.', "comma", "point");
        var (marks, others) = (text.Count(mark), text.Count(other));
        var strange = Strange(text);
        var alsoStrip = strange.Count == 0 ? "" : $"{string.Join(" and ", strange)}, and ";
        return (marks, others) switch
        {
            (0, 1) => $"remove {alsoStrip}the {otherName}: it does not mark thousands here, and decimals are written with a {markName}, "
                + $"such as 1200{mark}50{OtherDialect(dialect)}.",
            (1, > 0) when text.LastIndexOf(other) < text.IndexOf(mark) =>
                $"remove {alsoStrip}the thousands {otherName}, so that it reads like 1200{mark}50.",
            (_, > 0) => $"write it without {alsoStrip}thousands marks and with a decimal {markName}, such as 1200{mark}50{OtherDialect(dialect)}.",
            _ when marks > 1 => $"remove {alsoStrip}the thousands marks: only one decimal {markName} is read, as in 1200{mark}50.",
            _ when strange.Count > 0 => $"remove {string.Join(" and ", strange)}, so that it reads like 1200{mark}50.",
            _ => $"write digits on both sides of the {markName} and a minus only in front, such as 1200{mark}50.",
        };
    }

    /// <summary>Characters that belong to no number, in order.</summary>
    private static List<string> Strange(ReadOnlySpan<char> text)
    {
        var found = new List<string>();
        var run = new StringBuilder();
        foreach (var one in $"{text}0")
        {
            if (!char.IsAsciiDigit(one) && one is not ('.' or ',' or '-'))
                run.Append(one);
            else if (run.Length > 0)
            {
                found.Add(Named(run.ToString()));
                run.Clear();
            }
        }

        return [.. found.Distinct().Take(3)];
    }

    private static string Named(string run) => string.IsNullOrWhiteSpace(run) ? "the spaces" : $"\"{Short(run.Trim())}\"";

    private static string OtherDialect(SheetDialect dialect) => dialect == SheetDialect.Comma
        ? "; a sheet with decimal commas and semicolons is sent with dialect=semicolon"
        : "; a sheet with decimal points and commas is sent without dialect=semicolon";

    private static string Short(ReadOnlySpan<char> text) => text.Length <= 40 ? text.ToString() : $"{text[..40]}...";
}
