namespace PriceFloor.Api.Http.Reading;

/// <summary>Bodies must be uncompressed: a body that says it is compressed is refused before any of it is read.</summary>
public static class ContentCoding
{
    public const string Identity = "identity";

    /// <summary>The problem of a body with a coding; null for one without.</summary>
    public static Problem? Against(HttpRequest request)
    {
        if (request.Headers.ContentEncoding.Count == 0)
            return null;
        var codings = request.Headers.ContentEncoding.ToString();
        return codings.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .All(coding => coding.Equals(Identity, StringComparison.OrdinalIgnoreCase))
            ? null
            : Problem.OfCoding(codings.Length <= 40 ? codings : codings[..40] + "...");
    }
}
