using System.Text.Json;
using PriceFloor.Api.Tests.Workbooks;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests;

/// <summary>An answer, read whole.</summary>
public sealed record Answer(int Status, string Text, string? ContentType, IReadOnlyDictionary<string, string> Headers)
{
    public JsonElement Json => JsonDocument.Parse(Text).RootElement;

    public string? this[string header] => Headers.GetValueOrDefault(header);

    public IReadOnlyList<string> Pointers => [.. Json.GetProperty("errors").EnumerateArray()
        .Select(error => error.TryGetProperty("pointer", out var pointer) ? pointer.GetString()! : error.GetProperty("parameter").GetString()!)];

    public IReadOnlyList<string> Codes => [.. Json.GetProperty("errors").EnumerateArray().Select(error => error.GetProperty("code").GetString()!)];

    /// <summary>A problem's slug.</summary>
    public string Slug => Json.GetProperty("type").GetString()!.Split('/')[^1];

    public static async Task<Answer> Of(HttpResponseMessage response) => new(
        (int)response.StatusCode, await TextOf(response.Content), response.Content.Headers.ContentType?.MediaType,
        response.Headers.Concat(response.Content.Headers)
            .ToDictionary(header => header.Key, header => string.Join(", ", header.Value), StringComparer.OrdinalIgnoreCase));

    /// <summary>A workbook is a zip: what is searched in it must be unpacked.</summary>
    private static async Task<string> TextOf(HttpContent content) => content.Headers.ContentType?.MediaType == Book.Type
            && await content.ReadAsByteArrayAsync(Studio.Cancellation) is { Length: > 0 } workbook // HEAD has none
        ? Book.Unpacked(workbook)
        : await content.ReadAsStringAsync(Studio.Cancellation);

    /// <summary>Every code and reason of a problem must be in docs/reference/codes.md, or be a kind of problem.</summary>
    private void HasKnownCodes()
    {
        IEnumerable<string> codes = Json.TryGetProperty("errors", out _) ? Codes : [];
        if (Json.TryGetProperty("reason", out var reason))
            codes = codes.Append(reason.GetString()!);
        Xunit.Assert.All(codes, code => Xunit.Assert.Contains(code, s_known));
    }

    private static readonly HashSet<string> s_known =
        [.. Conventions.Codes.Faults.Select(code => code.Word), .. PriceFloor.Api.Http.ProblemTypes.All.Select(type => type.Slug)];

    /// <summary>The answer must be this problem, as JSON.</summary>
    public Answer IsProblem(int status, string slug)
    {
        Xunit.Assert.Equal((status, "application/problem+json"), (Status, ContentType));
        Xunit.Assert.Equal(slug, Slug);
        Xunit.Assert.Equal(status, Json.GetProperty("status").GetInt32());
        Xunit.Assert.Equal("no-store", this["Cache-Control"]);
        HasKnownCodes();
        return this;
    }
}
