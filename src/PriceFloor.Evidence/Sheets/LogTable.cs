using PriceFloor.Statements;
using PriceFloor.Statements.Files;

namespace PriceFloor.Evidence.Sheets;

/// <summary>A sheet by its fields: where its heading is, and which column holds what. It reads no other column.</summary>
internal sealed class LogTable
{
    /// <summary>Lines above the heading that are skipped.</summary>
    private const int MostPreamble = 20;

    private readonly string _text;
    private readonly char _separator;
    private readonly int _line, _count;
    private readonly int[] _columns;
    private readonly List<Fault> _doubled = [];

    private LogTable(string text, char separator, SheetRow heading, LogSheet sheet, IReadOnlyList<LogField> fields)
    {
        (_text, _separator, _line, _count) = (text, separator, heading.Line, heading.Cells!.Count);
        string[] words = [.. heading.Cells.Select(Plain)];
        _columns = new int[Enum.GetValues<LogField>().Length];
        Array.Fill(_columns, -1);
        foreach (var field in fields)
            _columns[(int)field] = Find(words, field, sheet.Columns.GetValueOrDefault(field));
    }

    /// <summary>The sheet, or what is wrong with its heading.</summary>
    /// <param name="text">The whole text.</param>
    /// <param name="sheet">How it is written.</param>
    /// <param name="fields">The fields that such a sheet may have.</param>
    /// <param name="needed">The fields without which it says nothing; of each group one.</param>
    public static Outcome<LogTable> Of(string text, LogSheet sheet, IReadOnlyList<LogField> fields, Func<LogTable, IEnumerable<LogField[]>> needed)
    {
        var (own, other) = sheet.Semicolon ? (';', ',') : (',', ';');
        var found = Best(text, own, sheet, fields);
        if (found is not { IsHeading: true } && Best(text, '\t', sheet, fields) is { IsHeading: true } tabbed)
            found = tabbed;
        if (found is not { IsHeading: true } && Best(text, other, sheet, fields) is { IsHeading: true })
            return SheetHeader.OtherDialect(sheet.Semicolon);
        if (found is null)
            return new Fault("", FileCodes.UnknownFormat, "The sheet is empty; its first row must name its columns.");
        return found.FaultsOf(sheet, fields, needed(found)) is { Count: > 0 } faults ? faults : found;
    }

    public IEnumerable<SheetRow> Rows => new SheetRows(_text, _separator).Read().Where(row => row.Line > _line && !row.IsEmpty);

    /// <summary>The dates of the sheet: in the order that the caller says, else the one that a line proves.</summary>
    public SheetDates Dates(DateOrder? said) => new(said, () => Rows.Select(row => Cell(row.Cells ?? [], LogField.On)));

    public bool Has(LogField field) => _columns[(int)field] >= 0;

    /// <summary>The cell of a field without spaces at its ends; empty if there is none.</summary>
    public string Cell(IReadOnlyList<string> cells, LogField field) =>
        _columns[(int)field] is >= 0 and var at && at < cells.Count ? cells[at].Trim() : "";

    /// <summary>Why none of a row's cells can be trusted; null if they can.</summary>
    public LineFault? FaultOf(SheetRow row) => row.Cells is not { } cells ? LineFault.Quotes
        : cells.Skip(_count).Any(cell => !string.IsNullOrWhiteSpace(cell)) ? LineFault.TooManyCells
        : null;

    /// <summary>A heading names the day and something else.</summary>
    private bool IsHeading => Has(LogField.On) && _columns.Count(column => column >= 0) > 1;

    private static LogTable? Best(string text, char separator, LogSheet sheet, IReadOnlyList<LogField> fields)
    {
        LogTable? first = null;
        foreach (var row in new SheetRows(text, separator).Read().Take(MostPreamble + 1).Where(row => row.Cells is not null && !row.IsEmpty))
        {
            var table = new LogTable(text, separator, row, sheet, fields);
            if (table.IsHeading)
                return table;
            first ??= table;
        }

        return first;
    }

    /// <summary>Headings are compared without capitals, spaces and underscores: "Line total" is lineTotal.</summary>
    private static string Plain(string heading) => SheetWords.Plain(heading).Replace(" ", "", StringComparison.Ordinal);

    private int Find(string[] words, LogField field, string? named)
    {
        string[] names = named is not null ? [named] : field == LogField.On ? [field.Name(), "date"] : [field.Name()];
        foreach (var name in names.Select(Plain))
            if (Array.IndexOf(words, name) is >= 0 and var found)
            {
                if (Array.IndexOf(words, name, found + 1) > 0)
                    _doubled.Add(new Fault(field.Parameter(), FileCodes.DuplicateColumn,
                        $"Two columns of the sheet have the name of {field.Name()}; rename or delete one, or name another with {field.Parameter()}."));
                return found;
            }

        return -1;
    }

    private List<Fault> FaultsOf(LogSheet sheet, IReadOnlyList<LogField> fields, IEnumerable<LogField[]> needed) =>
    [
        .. _doubled,
        .. fields.Where(field => !Has(field) && sheet.Columns.ContainsKey(field)).Select(field => Missing([field])),
        .. needed.Where(group => !group.Any(field => Has(field) || sheet.Columns.ContainsKey(field))).Select(Missing),
    ];

    private static Fault Missing(LogField[] group) => new(group[0].Parameter(), FileCodes.MissingColumn,
        $"No column of the sheet is the one for {string.Join(" or ", group.Select(LogFields.Name))}; "
        + $"say {string.Join(" or ", group.Select(field => $"?{field.Parameter()}="))} with the column's name in the sheet.");
}
