using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Api.Workbooks.Files;

namespace PriceFloor.Api.Workbooks;

/// <summary>A cell of a workbook as the text of a sheet, so that both are read in one way.</summary>
internal static class CellText
{
    private const int Longest = 32_767; // a spreadsheet takes no more

    /// <summary>The text, or why the cell has none for its column.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="schema">What its column has; null for the key.</param>
    /// <param name="name">The column's name.</param>
    /// <param name="dialect">How numbers are written.</param>
    /// <param name="from1904">Whether days are counted from 1904.</param>
    public static (string Text, (Code Code, string Detail)? Fault) Of(WorkbookCell cell, BodySchema? schema, string name, SheetDialect dialect,
        bool from1904) => cell.Kind switch
        {
            WorkbookCellKind.Error => ("", (InputCodes.CellWithoutValue,
                $"{name} shows the error {WorkbookFile.Short(cell.Text)}; correct the formula, or type the value.")),
            WorkbookCellKind.NoResult => ("", (InputCodes.CellWithoutValue,
                $"{name} is a formula without a result; open the workbook in the spreadsheet and save it, or type the value.")),
            WorkbookCellKind.Date when schema is BodySchema.Number => ("", (InputCodes.CellWithoutValue,
                $"{name} is a date here; give the cell the format of a number and type the number again.")),
            WorkbookCellKind.Date => (CellNumber.Day(cell.Text, from1904), null),
            WorkbookCellKind.Number when schema is BodySchema.Date => (CellNumber.Day(cell.Text, from1904), null),
            WorkbookCellKind.Number => (CellNumber.Plain(cell.Text).Replace('.', dialect.DecimalMark), null),
            _ when cell.Text.Length > Longest => ("", (InputCodes.TooLong,
                FormattableString.Invariant($"{name} has {cell.Text.Length} characters; a cell has at most {Longest}."))),
            _ => (cell.Text, null),
        };

    /// <summary>The name of a cell as the spreadsheet shows it: C7.</summary>
    public static string NameOf(long column, long row)
    {
        var letters = "";
        for (var rest = column; rest > 0; rest = (rest - 1) / 26)
            letters = (char)('A' + (rest - 1) % 26) + letters;
        return FormattableString.Invariant($"{letters}{row}");
    }
}
