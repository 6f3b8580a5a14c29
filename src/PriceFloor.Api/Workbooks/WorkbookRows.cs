using System.Text;
using PriceFloor.Api.DocumentSheets;
using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;
using PriceFloor.Api.Workbooks.Files;

namespace PriceFloor.Api.Workbooks;

/// <summary>The rows of a sheet of a workbook, read as those of a sheet of text are.</summary>
internal static class WorkbookRows
{
    /// <summary>Every row below the headings.</summary>
    /// <param name="cells">The sheet as it was sent.</param>
    /// <param name="sheet">What it is.</param>
    /// <param name="dialect">How numbers are written that are texts.</param>
    /// <param name="find">The document of a key as it is so far.</param>
    /// <param name="faults">Gets the faults of the headings.</param>
    public static List<ReadRow> Of<T>(WorkbookSheet cells, DocumentSheetOf<T> sheet, SheetDialect dialect, Func<string, T?> find,
        List<InputError> faults) where T : class
    {
        if (cells.Rows.Count == 0)
            return [];
        string[] known = [sheet.KeyColumn, .. sheet.Fields.Select(field => field.Name)];
        var names = NamesOf(cells.Rows[0]).ConvertAll(name => SheetPlaces.Known(name, known));
        var columns = SheetPlaces.Of([.. names.Where(name => name.Length > 0)], sheet.KeyColumn, sheet.Fields.Select(field => field.Name),
            sheet.About);
        if (columns.Found is null)
        {
            faults.AddRange(columns.Faults.Cast<RequestFault>().Select(fault => fault.Error! with
            {
                Line = cells.Rows[0].Number,
                Column = Math.Max(0, names.IndexOf(fault.Error!.Parameter!)) + 1,
            }));
            return [];
        }

        var places = SheetPlaces.Of(Filled(names), sheet.KeyColumn, [.. sheet.Fields.Select(field => field.Name), .. NoNames(names)],
            sheet.About).Value;
        return [.. cells.Rows.Skip(1).Select(row => Read(row, cells, sheet, names, places, dialect, find) with { Cells = places })];
    }

    private static ReadRow Read<T>(WorkbookRow row, WorkbookSheet cells, DocumentSheetOf<T> sheet, List<string> names, SheetPlaces places,
        SheetDialect dialect, Func<string, T?> find) where T : class
    {
        var texts = Enumerable.Repeat("", names.Count).ToArray();
        var faults = new List<InputError>();
        foreach (var cell in row.Cells.Where(cell => cell.Text.Length > 0))
        {
            var name = cell.Column < names.Count ? names[cell.Column] : "";
            var field = sheet.Fields.FirstOrDefault(field => field.Name == name);
            (string Text, (Code Code, string Detail)? Fault) read = name.Length > 0
                ? CellText.Of(cell, field?.About.Schema, name, dialect, cells.From1904)
                : ("", (InputCodes.UnknownColumn, SheetPlaces.NoHeading));
            if (read.Fault is var (code, detail))
                faults.Add(new InputError { Parameter = name, Code = code, Detail = detail, Line = row.Number, Column = cell.Column + 1 });
            else
                texts[cell.Column] = read.Text;
        }

        var text = SheetRow.OfCells(texts, row.Number);
        var key = Encoding.UTF8.GetString(text.Cell(places.Key));
        var found = sheet.Read(key, text, places, dialect, find, rules: null);
        return faults.Count == 0 ? found
            : found with { Value = null, Faults = [.. faults, .. found.Faults.Where(one => !faults.Exists(fault => fault.Column == one.Column))] };
    }

    private static List<string> NamesOf(WorkbookRow row)
    {
        var names = Enumerable.Repeat("", row.Cells[^1].Column + 1).ToList();
        foreach (var cell in row.Cells)
            names[cell.Column] = cell.Text.Trim();
        while (names[^1].Length == 0)
            names.RemoveAt(names.Count - 1);
        return names;
    }

    /// <summary>Columns without a heading keep their places under a name that no sheet has.</summary>
    private static List<string> Filled(List<string> names) => [.. names.Select((name, index) => name.Length > 0 ? name : NoName(index))];

    private static IEnumerable<string> NoNames(List<string> names) =>
        names.Index().Where(one => one.Item.Length == 0).Select(one => NoName(one.Index));

    private static string NoName(int index) => FormattableString.Invariant($" {index}");
}
