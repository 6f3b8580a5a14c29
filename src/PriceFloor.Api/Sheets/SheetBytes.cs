using System.IO.Pipelines;

namespace PriceFloor.Api.Sheets;

/// <summary>A whole sheet as bytes, for answers that are kept and have an ETag.</summary>
public static class SheetBytes
{
    /// <param name="dialect">Commas or semicolons.</param>
    /// <param name="columns">The header.</param>
    /// <param name="rows">What the rows are about.</param>
    /// <param name="write">Writes the cells of one row.</param>
    /// <param name="cancel">Stops it.</param>
    public static async Task<byte[]> Of<T>(SheetDialect dialect, string[] columns, IEnumerable<T> rows, Action<SheetDocument, T> write,
        CancellationToken cancel)
    {
        using var bytes = new MemoryStream();
        var pipe = PipeWriter.Create(bytes, new StreamPipeWriterOptions(leaveOpen: true));
        using (var sheet = new SheetDocument(pipe, dialect, columns))
        {
            foreach (var row in rows)
            {
                write(sheet, row);
                sheet.EndRow();
                if (sheet.IsFull)
                    await sheet.FlushAsync(cancel);
            }

            await sheet.FlushAsync(cancel);
        }

        await pipe.CompleteAsync();
        return bytes.ToArray();
    }
}
