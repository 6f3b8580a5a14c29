namespace PriceFloor.Api.Workbooks.Files;

/// <summary>A cell with something in it.</summary>
/// <param name="Column">Its column, from 0.</param>
/// <param name="Kind">What it has.</param>
/// <param name="Text">Its text, or its number as the file has it.</param>
internal readonly record struct WorkbookCell(int Column, WorkbookCellKind Kind, string Text);

/// <summary>What a cell has; a date is a number that is shown as one.</summary>
internal enum WorkbookCellKind { Text, Number, Date, Flag, Error, NoResult }

/// <summary>A row that is not blank.</summary>
/// <param name="Number">As the spreadsheet shows it.</param>
/// <param name="Cells">In order of column.</param>
internal sealed record WorkbookRow(int Number, IReadOnlyList<WorkbookCell> Cells);

/// <summary>A sheet of a workbook.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Rows">Its rows in order.</param>
/// <param name="From1904">Whether its days are counted from 1904.</param>
internal sealed record WorkbookSheet(string Name, IReadOnlyList<WorkbookRow> Rows, bool From1904);
