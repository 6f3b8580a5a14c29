using FluentValidation;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>Reads the files of a request into memory, and keeps them nowhere else.</summary>
public static class StatementBody
{
    /// <summary>Ten years of a busy account in the most verbose format.</summary>
    public const int MostBytes = 32 * 1024 * 1024;

    public const int MostFiles = 24;

    private const string UnnamedAccount = "account";

    /// <summary>Media types for OFX, camt.053 and CSV; the content says which of them a file is.</summary>
    private static readonly string[] s_taken = ["text/csv", "text/plain", "application/xml", "text/xml", "application/x-ofx", "application/ofx",
        "application/octet-stream"];

    private static RequestFault TooLarge(int most) => RequestFault.Of(ProblemTypes.TooLarge,
        FormattableString.Invariant($"At most {MostFiles} files and {most} bytes are read together; send fewer years at a time."));

    public static async Task<Outcome<List<SentFile>>> ReadAsync(HttpContext context, string? account)
    {
        if (!MediaTypeHeaderValue.TryParse(context.Request.ContentType, out var type))
            return NotTaken();
        var most = context.RequestServices.GetRequiredService<BodyMemory>().MostOf(MostBytes);
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = most + 1;
        if (type.MediaType.Equals("multipart/form-data", StringComparison.OrdinalIgnoreCase))
            return await Parts(context, HeaderUtilities.RemoveQuotes(type.Boundary).Value, most);
        if (!s_taken.Contains(type.MediaType.Value, StringComparer.OrdinalIgnoreCase))
            return NotTaken();
        return await RequestBytes.ReadAllAsync(context, most) is { } body
            ? new List<SentFile> { new(account ?? UnnamedAccount, body) }
            : TooLarge(most);
    }

    private static async Task<Outcome<List<SentFile>>> Parts(HttpContext context, string? boundary, int most)
    {
        if (string.IsNullOrEmpty(boundary) || boundary.Length > 70)
            return Broken("The multipart body has no boundary of 1 to 70 characters (RFC 2046).");
        if (context.Request.ContentLength > most)
            return TooLarge(most);
        var memory = context.RequestServices.GetRequiredService<BodyMemory>();
        memory.Take(context, context.Request.ContentLength ?? 0);
        var (files, layouts, left) = (new List<SentFile>(), new SentLayouts(), most);
        var reader = new MultipartReader(boundary, context.Request.Body);
        try
        {
            while (await reader.ReadNextSectionAsync(context.RequestAborted) is { } section)
            {
                if (files.Count > MostFiles || layouts.Count > MostFiles)
                    return TooLarge(most);
                if (!ContentDispositionHeaderValue.TryParse(section.ContentDisposition, out var part)
                        || HeaderUtilities.RemoveQuotes(part.Name).Value is not { Length: > 0 } name)
                    return Broken("A part of the multipart body has no name; give the form field the account's name.");
                if (await Read(section.Body, left, context.RequestAborted) is not { } bytes)
                    return TooLarge(most);
                if (context.Request.ContentLength is null)
                    memory.Take(context, bytes.Length);
                left -= bytes.Length;
                if (!layouts.Takes(name, bytes))
                    files.Add(new SentFile(name, bytes) { IsInForm = true });
            }

            if (files.Count > MostFiles || layouts.Count > MostFiles)
                return TooLarge(most);
        }
        catch (Exception e) when (e is InvalidDataException || (e is IOException and not BadHttpRequestException))
        {
            return Broken("The multipart body is incomplete, or the headers of its parts are too long.");
        }

        return files.Count == 0 ? Broken("The multipart body has no file in it.")
            : layouts.Laid(files, context.RequestServices.GetRequiredService<IValidator<StatementLayout>>());
    }

    private static async Task<byte[]?> Read(Stream body, int most, CancellationToken cancel)
    {
        using var bytes = new MemoryStream();
        var block = new byte[64 * 1024];
        while (await body.ReadAsync(block, cancel) is > 0 and var count)
        {
            if (bytes.Length + count > most)
                return null;
            bytes.Write(block, 0, count);
        }

        return bytes.ToArray();
    }

    private static RequestFault NotTaken() =>
        RequestFault.Of(ProblemTypes.MediaType, $"Send files as multipart/form-data, or one file as {string.Join(", ", s_taken)}.");

    private static RequestFault Broken(string detail) =>
        RequestFault.Unreadable(new InputError { Pointer = "#", Code = InputCodes.Malformed, Detail = detail });
}

/// <summary>A file as sent.</summary>
/// <param name="Name">The form field's name, or the name in the query: its account's name if the file does not give one.</param>
/// <param name="Bytes">The file.</param>
public sealed record SentFile(string Name, ReadOnlyMemory<byte> Bytes)
{
    /// <summary>The name of the maker's own book of cash: a sheet whose lines may say themselves what they are.</summary>
    private const string CashBook = "cash-book";

    public bool IsCashBook => Name == CashBook;

    /// <summary>Whether it is a field of a form, beside which a layout of its own may be.</summary>
    public bool IsInForm { get; init; }

    /// <summary>How it is written, if it is a sheet.</summary>
    public StatementLayout Layout { get; init; } = new();

    /// <summary>The stored layout that has a part in it.</summary>
    public string? LayoutBasis { get; init; }
}
