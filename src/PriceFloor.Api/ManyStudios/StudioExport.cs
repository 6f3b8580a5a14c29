using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.ManyStudios;

/// <summary>
/// Everything that a studio has stored, as lines of JSON. It is written to a file first: it is all of one moment, and no slow caller holds the store.
/// </summary>
public sealed class StudioExport : IResult
{
    private const int Block = 16 * 1024;

    private readonly FileStream _file;
    private readonly PutBy _putBy;

    private StudioExport(FileStream file, PutBy putBy) => (_file, _putBy) = (file, putBy);

    public static async Task<StudioExport> Of(Store store, string folder, PutBy putBy)
    {
        var file = SpillingWriter.Unnamed(folder);
        try
        {
            using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            var lines = 0L;
            await store.ReadAsync(async snapshot =>
            {
                await snapshot.Export(async line =>
                {
                    hash.AppendData(line.Span);
                    hash.AppendData("\n"u8);
                    await file.WriteAsync(line);
                    await file.WriteAsync("\n"u8.ToArray());
                    lines++;
                });
                return true;
            });
            await file.WriteAsync(Encoding.UTF8.GetBytes(LastLine(lines, Convert.ToHexStringLower(hash.GetHashAndReset())) + "\n"));
            putBy.Add(file.Length);
            return new StudioExport(file, putBy);
        }
        catch
        {
            await file.DisposeAsync();
            throw;
        }
    }

    /// <summary>The line that ends an export: how many lines come before it, and the SHA-256 of their bytes, line ends included.</summary>
    public static string LastLine(long lines, string sha256) =>
        string.Create(CultureInfo.InvariantCulture, $"{{\"end\":{{\"lines\":{lines},\"sha256\":\"{sha256}\"}}}}");

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        var length = _file.Length;
        try
        {
            response.Headers.CacheControl = "no-store";
            response.ContentType = Format.Ndjson.ContentType;
            response.ContentLength = length;
            _file.Position = 0;
            var block = new byte[Block];
            while (await _file.ReadAsync(block, httpContext.RequestAborted) is > 0 and var count)
                await AnswerBlocks.WriteAsync(response, block.AsMemory(0, count), httpContext.RequestAborted);
        }
        finally
        {
            await _file.DisposeAsync();
            _putBy.Remove(length);
        }
    }
}
