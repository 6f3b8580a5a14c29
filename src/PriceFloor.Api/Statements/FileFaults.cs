using System.Globalization;
using PriceFloor.Api.Http;
using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>What is wrong with a sent file, at the field of the form that it is, and what that file alone would need.</summary>
/// <param name="sent">All files.</param>
/// <param name="index">Which of them it is.</param>
internal sealed class FileFaults(IReadOnlyList<SentFile> sent, int index)
{
    private readonly SentFile _file = sent[index];

    private const string OtherMoney = " If money in and money out have a column each, name them with \"inColumn\" and \"outColumn\" in place of "
        + "\"amountColumn\"; if a card counts purchases as positive, add \"positiveIsOut\":true.";

    /// <summary>The file can be read, but is written in a way that has to be said.</summary>
    private static readonly Code[] s_ofWriting = [FileCodes.MissingColumn, FileCodes.Dialect, FileCodes.DuplicateColumn, FileCodes.UnsignedAmount];

    /// <summary>A fault that a parameter can fix is invalid input; any other is unreadable.</summary>
    public List<Fault> Unreadable(IReadOnlyList<Fault> faults)
    {
        var first = faults[0];
        return first.Code == FileCodes.TooMany ? [RequestFault.Of(ProblemTypes.TooLarge, first.Detail)]
            : s_ofWriting.Contains(first.Code) ? [.. faults.Select(fault => RequestFault.Invalid(Error(fault)))]
            : [RequestFault.Unreadable(Error(first))];
    }

    /// <summary>If no line of the file can be read, each reason once: how often and on which line first.</summary>
    public IEnumerable<Fault> Failed(StatementFile file) => file.WhollyFailed
        .GroupBy(line => (line.Code, line.Detail)).Select(equal => RequestFault.Invalid(Error(new("", equal.Key.Code,
            equal.Count() == 1 ? equal.Key.Detail : FormattableString.Invariant(
                $"{equal.Key.Detail} So it is on {equal.Count()} lines; line {equal.First().Line} is the first."))) with
        {
            Line = equal.First().Line,
        }));

    private InputError Error(Fault fault) => new()
    {
        Pointer = Pointer,
        Code = fault.Code,
        Detail = LayoutFor(fault) is { } layout ? $"{fault.Detail} For this file alone, send one more field: {layout}" : fault.Detail,
    };

    /// <summary>The name of its field; if several fields have it, also which of them.</summary>
    private string Pointer
    {
        get
        {
            if (!_file.IsInForm)
                return "#";
            var name = $"#/{_file.Name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}";
            return sent.Count(file => file.Name == _file.Name) == 1 ? name
                : string.Create(CultureInfo.InvariantCulture, $"{name}/{sent.Take(index).Count(file => file.Name == _file.Name)}");
        }
    }

    /// <summary>The layout that says what is missing, ready to be completed; null if no layout can.</summary>
    private string? LayoutFor(Fault fault)
    {
        var code = fault.Code;
        var dialect = fault.Pointer == "dialect" || _file.Layout.Dialect == StatementDialect.Semicolon ? "\"dialect\":\"semicolon\"," : "";
        var says = code == FileCodes.MissingColumn ? $$"""{{{dialect}}"dateColumn":"...","textColumn":"...","amountColumn":"..."}"""
            : code == FileCodes.UnsignedAmount ? """{"directionColumn":"..."}"""
            : code == LineCodes.AmbiguousDate ? """{"dateOrder":"day-month-year"}"""
            : code == FileCodes.Dialect ? $$"""{"dialect":"{{(_file.Layout.Dialect == StatementDialect.Semicolon ? "comma" : "semicolon")}}"}"""
            : null;
        return says is null || !_file.IsInForm ? null
            : $"-F '{_file.Name}.layout={says}'.{(code == FileCodes.MissingColumn ? OtherMoney : "")}";
    }
}
