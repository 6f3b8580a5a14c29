using PriceFloor.Api.Documents;
using PriceFloor.Api.DocumentSheets;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Workbooks;

/// <summary>A document as the sheets of a workbook make it, one after the other.</summary>
internal sealed class DocumentDraft<T>(string key) where T : class
{
    public string Key { get; } = key;

    /// <summary>The document so far; null while nothing makes one.</summary>
    public T? Document { get; set; }

    /// <summary>The sheets that have rows about it.</summary>
    public List<(DocumentSheetOf<T> Sheet, List<ReadRow> Rows)> Parts { get; } = [];

    /// <summary>Its faults, at their cells.</summary>
    public List<InputError> Faults { get; } = [];

    /// <summary>What was stored, or is stored already.</summary>
    public Saved? Saved { get; set; }

    /// <summary>A fault of the whole document at the cell that it is about; else at its first row.</summary>
    public InputError Placed(InputError fault)
    {
        foreach (var (sheet, rows) in Parts)
            if (sheet.Placed(fault, rows) is { } placed)
                return WorkbookFaults.In(placed, sheet.Name);
        var (first, firstRows) = Parts.First(part => part.Rows.Count > 0);
        return WorkbookFaults.In(fault with
        {
            Pointer = null,
            Parameter = fault.Parameter ?? fault.Pointer?.Split('/')[^1],
            Line = firstRows[0].Line,
            Column = firstRows[0].ColumnOf(first.KeyColumn),
        }, first.Name);
    }
}
