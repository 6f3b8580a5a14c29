using System.IO.Pipelines;
using System.Text;
using PriceFloor.Api.Access;
using PriceFloor.Api.Sheets;
using Xunit;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>Sheets sent through reader and writer, as a handler does it.</summary>
internal static class WrittenSheet
{
    public static readonly SheetAnswer Fine = new("above-target", 34.29m, 41.00m);

    public static async Task<string> Of(string sheet, SheetAnswer? answer = null, SheetDialect? dialect = null, ColumnNames? names = null,
        int most = SheetReader.MostRowBytes) =>
            Encoding.UTF8.GetString(await Of(Encoding.UTF8.GetBytes(sheet), answer, dialect, names, most));

    public static async Task<byte[]> Of(byte[] sheet, SheetAnswer? answer = null, SheetDialect? dialect = null, ColumnNames? names = null,
        int most = SheetReader.MostRowBytes)
    {
        byte[]? first = null;
        foreach (var pipe in (PipeReader[])[Dripping.Whole(sheet), Dripping.Pieces(sheet, 1)])
        {
            var written = await Once(pipe, answer ?? Fine, dialect ?? SheetDialect.Comma, names ?? new(), most);
            Assert.Equal(first ??= written, written);
        }

        return first!;
    }

    private static async Task<byte[]> Once(PipeReader pipe, SheetAnswer answer, SheetDialect dialect, ColumnNames names, int most)
    {
        var cancel = TestContext.Current.CancellationToken;
        var written = new MemoryStream();
        using var sheet = new SheetReader(pipe, dialect, most);
        var (header, _) = await sheet.ReadHeaderAsync(cancel);
        var (columns, _) = SheetColumns.Of(header!, names, dialect);
        using var answers = new SheetWriter(PipeWriter.Create(written), header!, columns!, dialect);
        answers.WriteHeader();
        while (await sheet.WaitAsync(cancel))
        {
            while (!answers.IsFull && sheet.TryNext(out var row))
                answers.Write(row, answer);
            await answers.FlushAsync(cancel);
        }

        return written.ToArray();
    }
}
