using PriceFloor.Api.Http;

namespace PriceFloor.Api.Workbooks;

/// <summary>Faults of a workbook, each with its sheet and cell.</summary>
internal static class WorkbookFaults
{
    public static InputError In(InputError fault, string sheet) =>
        fault with { Sheet = sheet, Cell = CellText.NameOf(fault.Column ?? 1, fault.Line ?? 1) };

    /// <summary>One problem for all of them: their common kind, else invalid input.</summary>
    public static Problem Of(IReadOnlyList<(RequestFault Fault, InputError Placed)> faults, IReadOnlyList<string> sheets)
    {
        var first = faults[0].Fault;
        var isOneKind = first.Type != ProblemTypes.NotFound && faults.All(one => one.Fault.Type == first.Type);
        var errors = InOrder(faults.Select(one => one.Placed), sheets);
        return isOneKind ? Problem.Of([first]).WithErrors(errors) : Problem.Invalid(errors).WithErrors(errors);
    }

    /// <summary>In the order of the sheets that were sent, then of rows and cells.</summary>
    public static List<InputError> InOrder(IEnumerable<InputError> faults, IReadOnlyList<string> sheets) =>
        [.. faults.Distinct().OrderBy(fault => sheets.Index().FirstOrDefault(sheet => sheet.Item == fault.Sheet).Index)
            .ThenBy(fault => fault.Line).ThenBy(fault => fault.Column)];
}
