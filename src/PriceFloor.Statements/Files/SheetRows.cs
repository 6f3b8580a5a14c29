namespace PriceFloor.Statements.Files;

/// <summary>
/// Splits text into the rows of RFC 4180. This is not a library because a row whose quotes make no sense must cost only that one line: it is reported
/// without cells, and reading continues after the next line break.
/// </summary>
internal sealed class SheetRows(string text, char separator)
{
    /// <summary>A quoted cell longer than this was never meant to be one: its quote is a plain character.</summary>
    private const int LongestQuoted = 20_000;

    private const int MostCells = 1000;

    private int _at;
    private int _line = 1;
    private int _usualCells;

    public IEnumerable<SheetRow> Read()
    {
        while (_at < text.Length)
            yield return Next();
    }

    private SheetRow Next()
    {
        var (from, line) = (_at, _line);
        var cells = new List<string>(_usualCells);
        while (true)
        {
            if (cells.Count == MostCells || Cell() is not { } cell)
            {
                (_at, _line) = (from, line);
                ToLineBreak();
                PassLineBreak();
                return new SheetRow(line, null);
            }
            cells.Add(cell);
            if (_at < text.Length && text[_at] == separator)
            {
                _at++;
                continue;
            }
            PassLineBreak();
            _usualCells = cells.Count;
            return new SheetRow(line, cells);
        }
    }

    /// <summary>Reads one cell and stops before a separator, a line break or the end; null if its quotes make no sense.</summary>
    private string? Cell()
    {
        if (_at < text.Length && text[_at] == '"')
            return Quoted();
        var rest = text.AsSpan(_at);
        var length = rest.IndexOfAny(separator, '\r', '\n');
        var cell = length < 0 ? rest : rest[..length];
        _at += cell.Length;
        return cell.ToString();
    }

    private string? Quoted()
    {
        var from = ++_at;
        while (true)
        {
            var length = text.AsSpan(_at, int.Min(text.Length - _at, LongestQuoted)).IndexOf('"');
            if (length < 0 || _at + length - from > LongestQuoted)
                return null;
            _at += length + 1;
            if (_at >= text.Length || text[_at] != '"')
                break;
            _at++;
        }
        var inside = text.AsSpan(from, _at - 1 - from);
        _line += LineBreaks(inside);
        while (_at < text.Length && text[_at] == ' ')
            _at++;
        var ends = _at >= text.Length || text[_at] == separator || text[_at] is '\r' or '\n';
        return ends ? inside.ToString().Replace("\"\"", "\"", StringComparison.Ordinal) : null;
    }

    private void ToLineBreak()
    {
        var length = text.AsSpan(_at).IndexOfAny('\r', '\n');
        _at = length < 0 ? text.Length : _at + length;
    }

    /// <summary>CR LF, LF or CR.</summary>
    private void PassLineBreak()
    {
        if (_at >= text.Length)
            return;
        _at += text[_at] == '\r' && _at + 1 < text.Length && text[_at + 1] == '\n' ? 2 : 1;
        _line++;
    }

    private static int LineBreaks(ReadOnlySpan<char> inside)
    {
        var breaks = 0;
        for (var i = 0; i < inside.Length; i++)
            if (inside[i] == '\n' || (inside[i] == '\r' && (i + 1 == inside.Length || inside[i + 1] != '\n')))
                breaks++;
        return breaks;
    }
}

/// <summary>One line of a sheet; with quoted line breaks it runs over several lines of text.</summary>
/// <param name="Line">The line of text on which it begins, from 1.</param>
/// <param name="Cells">Unquoted; null if the quotes make no sense, or if there are too many cells.</param>
internal readonly record struct SheetRow(int Line, IReadOnlyList<string>? Cells)
{
    public bool IsEmpty => Cells is not null && Cells.All(string.IsNullOrWhiteSpace);
}
