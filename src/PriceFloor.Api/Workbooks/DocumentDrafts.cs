using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Documents.Batches;
using PriceFloor.Api.DocumentSheets;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using PriceFloor.Api.Workbooks.Files;
using PriceFloor.Storage;

namespace PriceFloor.Api.Workbooks;

/// <summary>Lays the sheets about one kind of document over the stored ones: all of them make one document, and so one revision.</summary>
internal sealed class DocumentDrafts<T> : IDocumentDrafts where T : class
{
    private static readonly Currency s_any = Currency.Of("USD");

    private readonly OrderedDictionary<string, DocumentDraft<T>> _drafts = [];
    private readonly List<InputError> _headings = [];
    private readonly DocumentKind<T> _kind;
    private readonly Func<string, T?> _stored;

    public DocumentDrafts(IReadOnlyDictionary<string, WorkbookSheet> workbook, Catalogue catalogue, SheetDialect dialect, DocumentKind<T> kind)
    {
        var sheets = SheetsOfDocuments.All.OfType<DocumentSheetOf<T>>().OrderByDescending(sheet => sheet.IsWhole).ToList();
        (_kind, _stored) = (kind, key => sheets[0].Find(catalogue, key));
        foreach (var sheet in sheets)
            if (workbook.TryGetValue(sheet.Name, out var cells))
                Lay(sheet, cells, dialect);
        Changes = [.. _drafts.Values.Where(draft => draft.Faults.Count == 0 && draft.Document is not null && !IsSame(draft))];
        foreach (var draft in _drafts.Values.Where(draft => draft.Document is not null && !IsSame(draft)))
            Check(draft); // also if other rows of it have faults: the maker corrects all at once
    }

    public IEnumerable<InputError> Faults => _headings.Concat(_drafts.Values.SelectMany(draft => draft.Faults));

    public int Changed => Changes.Count;

    public IEnumerable<WorkbookItemAnswer> Items => _drafts.Values.Where(draft => draft.Saved is not null).Select(draft =>
        new WorkbookItemAnswer(_kind.Name, draft.Key, AllOrNothing.ResultOf(draft.Saved!), draft.Saved!.Revision.Number));

    private List<DocumentDraft<T>> Changes { get; }

    public async ValueTask<List<(RequestFault Fault, InputError Placed)>> Save(Writing writing, ProfileAccess access)
    {
        var faults = new List<(RequestFault, InputError)>();
        foreach (var draft in Changes)
        {
            var outcome = await access.Against(writing, _kind.Name, draft.Key) is { } hidden ? hidden
                : await _kind.Save(writing, draft.Key, draft.Document!, access, await writing.Find(_kind.Name, draft.Key), mayNarrow: true);
            draft.Saved = outcome.Found;
            faults.AddRange(Placed(draft, outcome.Faults));
        }

        foreach (var draft in _drafts.Values.Where(draft => draft.Saved is null && !Changes.Contains(draft)))
            if (await writing.Find(_kind.Name, draft.Key) is { } stored)
                draft.Saved = new Saved(stored, stored);
        return faults;
    }

    public async ValueTask<List<(RequestFault Fault, InputError Placed)>> AgainstNarrowing(Writing writing)
    {
        var faults = new List<(RequestFault, InputError)>();
        foreach (var draft in Changes.Where(draft => draft.Saved?.Before is not null))
            if (await _kind.AgainstNarrowing(writing, draft.Key, draft.Document!, Stored<T>.Of(draft.Saved!.Before!)) is { } narrowed)
                faults.AddRange(Placed(draft, [narrowed]));
        return faults;
    }

    private static IEnumerable<(RequestFault, InputError)> Placed(DocumentDraft<T> draft, IEnumerable<Fault> faults) =>
        faults.Select(RequestFault.Of).Select(fault =>
            (fault, draft.Placed(fault.InBatch)));

    private void Lay(DocumentSheetOf<T> sheet, WorkbookSheet cells, SheetDialect dialect)
    {
        var headings = new List<InputError>();
        var rows = WorkbookRows.Of(cells, sheet, dialect, key => _drafts.GetValueOrDefault(key)?.Document ?? _stored(key), headings);
        _headings.AddRange(headings.Select(fault => WorkbookFaults.In(fault, sheet.Name)));
        foreach (var group in rows.GroupBy(row => row.Key))
            Lay(sheet, [.. group]);
        if (sheet.IsWhole || headings.Count > 0 || cells.Rows.Count == 0)
            return;
        foreach (var draft in _drafts.Values.Where(draft => draft.Parts.TrueForAll(part => part.Sheet != sheet)))
            if (draft.Document is { } document && sheet.RowsOf(draft.Key, document).Any())
                draft.Document = sheet.With(document, []); // the sheet is there, and no row of it is about this document
    }

    private void Lay(DocumentSheetOf<T> sheet, List<ReadRow> rows)
    {
        var key = rows[0].Key;
        if (!_drafts.TryGetValue(key, out var draft))
            _drafts[key] = draft = new DocumentDraft<T>(key) { Document = _stored(key) };
        draft.Parts.Add((sheet, rows));
        var faults = rows.SelectMany(row => row.Faults).Select(fault => WorkbookFaults.In(fault, sheet.Name)).ToList();
        if (sheet.IsWhole)
            faults.AddRange(rows.Skip(1).Select(row => Duplicate(row, rows[0], sheet)));
        var isMade = draft.Faults.Count == 0;
        draft.Faults.AddRange(faults);
        if (faults.Count > 0)
            return;
        if (sheet.With(draft.Document, rows) is { } document)
            draft.Document = document;
        else if (isMade)
            draft.Faults.Add(WorkbookFaults.In(sheet.Unknown(rows[0], _kind), sheet.Name));
    }

    private static InputError Duplicate(ReadRow row, ReadRow first, DocumentSheetOf<T> sheet) => WorkbookFaults.In(new InputError
    {
        Parameter = sheet.KeyColumn,
        Code = FaultCodes.Duplicate,
        Detail = FormattableString.Invariant($"\"{row.Key}\" is already in row {first.Line}; leave one of them out."),
        Line = row.Line,
        Column = row.ColumnOf(sheet.KeyColumn),
    }, sheet.Name);

    /// <summary>The rules of the whole document, each fault at its cell.</summary>
    private void Check(DocumentDraft<T> draft)
    {
        List<InputError> faults = [.. RecordReader.Check(draft.Document!)];
        faults.AddRange([.. Rules.Faults(_kind.Validator, draft.Document!, faults)]);
        draft.Faults.AddRange(faults.Select(draft.Placed));
    }

    private bool IsSame(DocumentDraft<T> draft) =>
        _stored(draft.Key) is { } stored && WireJson.WriteDocument(stored, s_any) == WireJson.WriteDocument(draft.Document!, s_any);
}
