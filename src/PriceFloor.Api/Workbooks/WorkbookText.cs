using System.IO.Compression;
using PriceFloor.Api.DocumentSheets;
using PriceFloor.Api.Sheets;
using PriceFloor.Api.Workbooks.Files;
using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace PriceFloor.Api.Workbooks;

/// <summary>Writes a workbook: the same bytes for the same studio, so its ETag changes only when the studio does.</summary>
internal static class WorkbookText
{
    private const int MostRows = 1_048_575;

    private static readonly DateTimeOffset s_never = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Null if a spreadsheet could not hold it: too many rows, or a cell that is too long.</summary>
    public static async Task<byte[]?> Of(IReadOnlyList<(DocumentSheet Sheet, IReadOnlyList<SheetLine> Lines)> sheets,
        IReadOnlyDictionary<string, string> explanations)
    {
        if (sheets.Any(sheet => sheet.Lines.Count > MostRows))
            return null;
        using var bytes = new MemoryStream();
        var options = new SpreadCheetahOptions
        {
            DefaultDateTimeFormat = NumberFormat.Custom("yyyy-mm-dd"),
            CompressionLevel = SpreadCheetahCompressionLevel.Fastest,
            DocumentProperties = null,
        };
        var fits = true;
        await using (var workbook = await Spreadsheet.CreateNewAsync(bytes, options))
        {
            var heading = workbook.AddStyle(new Style { Font = { Bold = true } });
            await WorkbookGuide.WriteAsync(workbook, heading, explanations);
            foreach (var (sheet, lines) in sheets)
                fits &= await WriteAsync(workbook, heading, sheet, lines);
            await workbook.FinishAsync();
        }

        return fits ? await WithoutTimes(bytes) : null;
    }

    private static async Task<bool> WriteAsync(Spreadsheet workbook, StyleId heading, DocumentSheet sheet, IReadOnlyList<SheetLine> lines)
    {
        var options = new WorksheetOptions { FrozenRows = 1 };
        for (var column = 1; column <= sheet.Columns.Count; column++)
            options.Column(column).Width = Math.Max(12, sheet.Columns[column - 1].Length + 3);
        await workbook.StartWorksheetAsync(sheet.Name, options);
        await workbook.AddRowAsync([.. sheet.Columns.Select(name => new Cell(name, heading))]);
        var cells = new RowCells();
        foreach (var line in lines)
        {
            cells.Clear();
            sheet.Write(cells, line);
            if (!cells.Fit)
                return false;
            await workbook.AddRowAsync(cells.Cells);
        }

        return true;
    }

    /// <summary>The library stamps each part with the time of day.</summary>
    private static async Task<byte[]> WithoutTimes(MemoryStream stamped)
    {
        using var plain = new MemoryStream();
        stamped.Position = 0;
        using (var from = new ZipArchive(stamped, ZipArchiveMode.Read))
        using (var to = new ZipArchive(plain, ZipArchiveMode.Create, leaveOpen: true))
            foreach (var entry in from.Entries)
            {
                var copy = to.CreateEntry(entry.FullName);
                copy.LastWriteTime = s_never;
                await using var source = await entry.OpenAsync();
                await using var target = await copy.OpenAsync();
                await source.CopyToAsync(target);
            }

        return plain.ToArray();
    }

    /// <summary>A row of cells: numbers are numbers and days are days. A text is never a formula, and is defused as in a sheet of text.</summary>
    private sealed class RowCells : ISheetCells
    {
        private const int LongestText = 32_767;

        public List<Cell> Cells { get; } = [];

        public bool Fit { get; private set; } = true;

        public void Clear() => Cells.Clear();

        public void Text(string? text)
        {
            var written = SharedTexts.Escaped(SheetText.Defused(text ?? ""));
            Fit &= written.Length <= LongestText;
            Cells.Add(written.Length == 0 ? default : new Cell(Fit ? written : ""));
        }

        public void Number(decimal? number)
        {
            if (number is { } value && !CellNumber.Fits(value))
                Cells.Add(new Cell(value.ToString(System.Globalization.CultureInfo.InvariantCulture)));
            else
                Cells.Add(number is null ? default : new Cell(number));
        }

        public void Day(DateOnly day)
        {
            if (day.Year < 1901)
                Text(day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
            else
                Cells.Add(new Cell(day.ToDateTime(TimeOnly.MinValue)));
        }

        public void Flag(bool flag) => Cells.Add(new Cell(flag));

        public void Empty() => Cells.Add(default);
    }
}
