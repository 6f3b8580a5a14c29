using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.DocumentSheets;
using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;
using PriceFloor.Api.Workbooks.Files;
using PriceFloor.Statements;
using PriceFloor.Storage;

namespace PriceFloor.Api.Workbooks;

/// <summary>All documents of a workbook, laid over those that are stored.</summary>
internal sealed class WorkbookDrafts
{
    private readonly IReadOnlyList<IDocumentDrafts> _kinds;
    private readonly IReadOnlyList<string> _sheets;

    public WorkbookDrafts(IReadOnlyList<WorkbookSheet> workbook, Catalogue catalogue, SheetDialect dialect, IServiceProvider services)
    {
        _sheets = [.. workbook.Select(sheet => sheet.Name)];
        var sheets = workbook.DistinctBy(sheet => sheet.Name).ToDictionary(sheet => sheet.Name);
        _kinds =
        [
            Of<CostProfile>(), Of<Channel>(), Of<Design>(), Of<ListedPrice>(), Of<ReadingRules>(), Of<Plan>(),
        ];
        Problem = Against();

        DocumentDrafts<T> Of<T>() where T : class => new(sheets, catalogue, dialect, services.GetRequiredService<DocumentKind<T>>());
    }

    /// <summary>Why nothing of it can be stored; null if it can.</summary>
    public Problem? Problem { get; }

    public WorkbookWriteAnswer Answer => WorkbookWriteAnswer.Of([.. _kinds.SelectMany(kind => kind.Items)]);

    /// <summary>Whether a sheet of that name is read; the others are the maker's own, or explain.</summary>
    public static bool IsRead(string name) => SheetsOfDocuments.Find(name) is not null;

    /// <summary>Stores everything, or reports why it cannot be; the caller then undoes what was written.</summary>
    public async ValueTask<Problem?> Save(Writing writing, ProfileAccess access)
    {
        foreach (var kind in _kinds)
            if (await kind.Save(writing, access) is { Count: > 0 } faults)
                return WorkbookFaults.Of(faults, _sheets);
        foreach (var kind in _kinds)
            if (await kind.AgainstNarrowing(writing) is { Count: > 0 } faults)
                return WorkbookFaults.Of(faults, _sheets);
        return null;
    }

    private Problem? Against()
    {
        var faults = WorkbookFaults.InOrder(OfSheets().Concat(_kinds.SelectMany(kind => kind.Faults)), _sheets);
        return faults.Count > 0 ? Problem.Invalid(faults).WithErrors(faults)
            : _kinds.Sum(kind => kind.Changed) > AllOrNothing.MostLines ? Problem.Of(ProblemTypes.TooLarge,
                $"At most {AllOrNothing.MostLines} documents are changed together; send them in parts.")
            : null;
    }

    private IEnumerable<InputError> OfSheets()
    {
        foreach (var (index, name) in _sheets.Index())
            if (_sheets.Take(index).Contains(name))
                yield return Fault(name, FaultCodes.Duplicate, $"The workbook has more than one sheet \"{name}\"; delete the others.");
            else if (!IsRead(name) && name != WorkbookGuide.Sheet && !name.StartsWith('_'))
                yield return Fault(name, InputCodes.UnknownSheet, $"A studio has no sheet \"{name}\"; there are "
                    + $"{string.Join(", ", SheetsOfDocuments.All.Select(sheet => sheet.Name))}. The name of a sheet of your own begins with _.");
    }

    private static InputError Fault(string sheet, Code code, string detail) => new() { Sheet = sheet, Code = code, Detail = detail };
}
