using Microsoft.Net.Http.Headers;

namespace PriceFloor.Api.Http;

/// <summary>A format in which lists come and go.</summary>
public sealed record Format(string MediaType, string ContentType)
{
    public static readonly Format Json = new("application/json", "application/json");
    public static readonly Format Ndjson = new("application/x-ndjson", "application/x-ndjson");
    public static readonly Format Csv = new("text/csv", "text/csv; charset=utf-8");
    public static readonly Format Html = new("text/html", HtmlPage.ContentType);
}

/// <summary>The formats that an endpoint answers in, the usual one first.</summary>
public sealed record Offers(IReadOnlyList<Format> Formats)
{
    public static readonly Offers JsonOnly = new([Format.Json]);

    /// <summary>The format that the caller wants most; null where it wants none of these. Problems are always JSON, so a caller that takes problems takes JSON.</summary>
    public Format? Wanted(HttpRequest request)
    {
        if (request.Headers.Accept.Count == 0)
            return Formats[0];
        var wanted = MediaTypeHeaderValue.ParseList(request.Headers.Accept);
        if (wanted.Count == 0)
            return Formats[0];
        return Formats.Index()
            .Select(format => (format.Item, format.Index, Quality: QualityOf(format.Item, wanted)))
            .Where(format => format.Quality > 0)
            .OrderByDescending(format => format.Quality).ThenBy(format => format.Index)
            .Select(format => format.Item).FirstOrDefault();
    }

    public static Offers Of(HttpContext context) => context.GetEndpoint()?.Metadata.GetMetadata<Offers>() ?? JsonOnly;

    /// <summary>The quality that the most exact of the wanted types gives (RFC 9110 section 12.5.1).</summary>
    private static double QualityOf(Format format, IList<MediaTypeHeaderValue> wanted) => wanted
        .Where(type => type.MatchesMediaType(format.MediaType) || (format == Format.Json && type.MediaType == "application/problem+json"))
        .OrderByDescending(type => type.MatchesAllTypes ? 0 : type.MatchesAllSubTypes ? 1 : 2)
        .Select(type => type.Quality ?? 1).FirstOrDefault();
}

public static class FormatConventions
{
    public static TBuilder Offer<TBuilder>(this TBuilder builder, params IReadOnlyList<Format> formats) where TBuilder : IEndpointConventionBuilder => builder.WithMetadata(new Offers(formats));
}
