using System.IO.Pipelines;
using System.Text;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>A copy of a row that was read.</summary>
internal sealed record ReadRow(long Line, string Raw, string LineEnd, string Values, string Fields, string Fault)
{
    public static ReadRow Of(SheetRow row) => new(
        row.Line,
        Encoding.Latin1.GetString(row.Raw),
        Encoding.Latin1.GetString(row.LineEnd),
        string.Join('|', Enumerable.Range(0, row.Count).Select(index => Encoding.UTF8.GetString(row.Value(index)))),
        string.Join('|', Enumerable.Range(0, row.Count).Select(index => Encoding.Latin1.GetString(row.Field(index)))),
        row.IsBlank ? "blank" : row.Fault is { } fault ? $"{fault.Code} {fault.Line}:{fault.Column}" : "");
}

/// <summary>Whole sheets, read as a caller would, each in every way in which its bytes can arrive.</summary>
internal static class ReadSheet
{
    public static async Task<List<ReadRow>> Rows(byte[] sheet, SheetDialect? dialect = null, int most = SheetReader.MostRowBytes)
    {
        List<ReadRow>? first = null;
        foreach (var pipe in sheet.Length <= 300 ? Dripping.EveryWay(sheet) : [Dripping.Whole(sheet), Dripping.Pieces(sheet, 7)])
        {
            var rows = await Once(pipe, dialect, most);
            Assert.Equal(first ??= rows, rows);
        }

        return first!;
    }

    public static Task<List<ReadRow>> Rows(string sheet, SheetDialect? dialect = null, int most = SheetReader.MostRowBytes) =>
        Rows(Encoding.UTF8.GetBytes(sheet), dialect, most);

    /// <summary>The rows below the header, each as "values" or "code line:column".</summary>
    public static async Task<string[]> Told(string sheet, SheetDialect? dialect = null, int most = SheetReader.MostRowBytes) =>
        [.. (await Rows(sheet, dialect, most)).Select(row => row.Fault.Length > 0 ? row.Fault : row.Values)];

    public static async Task<SheetHeader> Header(string sheet, SheetDialect? dialect = null)
    {
        using var reader = new SheetReader(Dripping.Whole(sheet), dialect ?? SheetDialect.Comma);
        var (header, fault) = await reader.ReadHeaderAsync(TestContext.Current.CancellationToken);
        Assert.Null(fault);
        return header!;
    }

    private static async Task<List<ReadRow>> Once(PipeReader pipe, SheetDialect? dialect, int most)
    {
        using var reader = new SheetReader(pipe, dialect ?? SheetDialect.Comma, most);
        var (header, fault) = await reader.ReadHeaderAsync(TestContext.Current.CancellationToken);
        Assert.Equal(header is null, fault is not null);
        var rows = new List<ReadRow>();
        while (await reader.WaitAsync(TestContext.Current.CancellationToken))
            while (reader.TryNext(out var row))
                rows.Add(ReadRow.Of(row));
        return rows;
    }
}
