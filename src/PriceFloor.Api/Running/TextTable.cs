using System.Text;

namespace PriceFloor.Api.Running;

/// <summary>Rows in columns for a terminal, written in blocks. A column's name with a plus before it is for figures, which end in one line.</summary>
internal sealed class TextTable(params string[] columns)
{
    private readonly List<string[]> _rows = [];
    private readonly int[] _widths = [.. columns.Select(column => column.TrimStart('+').Length)];
    private string? _last;
    private bool _isBegun;

    /// <summary>The rows that wait to be written.</summary>
    public int Count => _rows.Count;

    public void Add(params string[] cells) => _rows.Add([.. cells.Select(Visible)]);

    /// <summary>A line after all rows.</summary>
    public void AddLine(string words) => _last = words;

    public void WriteTo(TextWriter output)
    {
        foreach (var row in _rows)
            for (var column = 0; column < row.Length - 1; column++)
                _widths[column] = int.Max(_widths[column], row[column].Length);
        if (!_isBegun && _rows.Count > 0)
            output.WriteLine(Line([.. columns.Select(column => column.TrimStart('+'))]));
        _isBegun |= _rows.Count > 0;
        foreach (var row in _rows)
            output.WriteLine(Line(row));
        _rows.Clear();
        if (_last is not null)
            output.WriteLine(_last);
        _last = null;
    }

    private string Line(string[] cells)
    {
        var line = new StringBuilder();
        foreach (var (column, cell) in cells.Index())
            line.Append(columns[column][0] == '+' ? cell.PadLeft(_widths[column]) : cell.PadRight(_widths[column])).Append("  ");
        return line.ToString().TrimEnd();
    }

    /// <summary>What a sheet says must not steer the terminal.</summary>
    private static string Visible(string words) => string.Concat(words.Select(letter => char.IsControl(letter) ? '?' : letter));
}
