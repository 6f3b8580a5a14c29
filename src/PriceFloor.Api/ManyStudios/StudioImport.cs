using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http.Features;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;
using PriceFloor.Storage;

namespace PriceFloor.Api.ManyStudios;

/// <summary>An export that was sent: read to its end and counted before anything is looked at, then stored as a whole or not at all.</summary>
internal sealed class StudioImport : IAsyncDisposable
{
    private readonly FileStream _file;
    private readonly PutBy _putBy;
    private long _counted;

    private StudioImport(FileStream file, PutBy putBy) => (_file, _putBy) = (file, putBy);

    /// <summary>How many lines there are before the last.</summary>
    public long Lines { get; private set; }

    public static async Task<StudioImport> ReadAsync(HttpContext context, string folder, PutBy putBy)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = null; // what may wait in files is bounded over all callers
        var import = new StudioImport(SpillingWriter.Unnamed(folder), putBy);
        try
        {
            while (true)
            {
                var read = await context.Request.BodyReader.ReadAsync(context.RequestAborted);
                putBy.Add(read.Buffer.Length);
                import._counted += read.Buffer.Length;
                foreach (var part in read.Buffer)
                    await import._file.WriteAsync(part, context.RequestAborted);
                context.Request.BodyReader.AdvanceTo(read.Buffer.End);
                if (read.IsCompleted)
                    return import;
            }
        }
        catch
        {
            await import.DisposeAsync();
            throw;
        }
    }

    /// <summary>Why it is not a whole export: its last line counts the others and has their hash. Null if it is.</summary>
    public RequestFault? Broken()
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        ReadOnlyMemory<byte>? last = null;
        Lines = -1;
        foreach (var line in All())
        {
            if (last is { } before)
            {
                hash.AppendData(before.Span);
                hash.AppendData("\n"u8);
            }

            (last, Lines) = (line.ToArray(), Lines + 1);
        }

        return last is { } end && Encoding.UTF8.GetString(end.Span) == StudioExport.LastLine(Lines, Convert.ToHexStringLower(hash.GetHashAndReset()))
            ? null
            : Refused(long.Max(Lines + 1, 1), "The last line does not count these lines or has another SHA-256: the export is cut or was changed. "
                + "Export it again.");
    }

    /// <summary>Stores it; returns how many documents there are then.</summary>
    public Task<long> StoreAsync(Store store) => store.WriteAsync(StudioRoutes.Host, async writing =>
    {
        if (!await StoreImport.IsFor(writing))
            throw new NotEmptyException();
        var import = new StoreImport(writing);
        var left = Lines;
        foreach (var line in All())
            if (left-- > 0)
                await import.Add(line);
        await import.Finish((kind, body) => Kinds.Find(kind) is { } known ? known.FaultIn(body) : "is of a kind that this program does not know.");
        await store.CheckLimits(writing);
        return await writing.Documents;
    });

    public static RequestFault Refused(long line, string detail) => RequestFault.Unreadable(new InputError
    {
        Pointer = "#",
        Line = line,
        Column = 1,
        Code = InputCodes.Malformed,
        Detail = detail,
    });

    public async ValueTask DisposeAsync()
    {
        _putBy.Remove(_counted);
        await _file.DisposeAsync();
    }

    /// <summary>The lines without their ends; each is good until the next.</summary>
    private IEnumerable<ReadOnlyMemory<byte>> All()
    {
        _file.Position = 0;
        var (bytes, start, end) = (new byte[64 * 1024], 0, 0);
        while (true)
        {
            var at = bytes.AsSpan(start, end - start).IndexOf((byte)'\n');
            if (at >= 0)
            {
                yield return bytes.AsMemory(start, at);
                start += at + 1;
                continue;
            }

            if (start > 0)
            {
                bytes.AsSpan(start, end - start).CopyTo(bytes);
                (start, end) = (0, end - start);
            }

            if (end == bytes.Length)
                Array.Resize(ref bytes, bytes.Length * 2);
            var read = _file.Read(bytes, end, bytes.Length - end);
            if (read == 0)
                break;
            end += read;
        }

        if (end > start)
            yield return bytes.AsMemory(start, end - start);
    }
}

/// <summary>Something was stored already where an export is to be imported.</summary>
internal sealed class NotEmptyException() : Exception("The studio has documents, keys or a log already.");
