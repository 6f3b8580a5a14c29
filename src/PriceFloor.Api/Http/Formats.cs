using Microsoft.Net.Http.Headers;

namespace PriceFloor.Api.Http;

/// <summary>A format in which answers come and go.</summary>
/// <param name="MediaType">What Accept calls it.</param>
/// <param name="ContentType">What the answer says it is.</param>
/// <param name="Suffix">What an address may end in to ask for it where no Accept can be sent, such as an image in a page.</param>
public sealed record Format(string MediaType, string ContentType, string? Suffix = null)
{
    public static readonly Format Json = new("application/json", "application/json");
    public static readonly Format Ndjson = new("application/x-ndjson", "application/x-ndjson");
    public static readonly Format Csv = new("text/csv", "text/csv; charset=utf-8");
    public static readonly Format Xml = new("application/xml", "application/xml");
    public static readonly Format Ofx = new("application/x-ofx", "application/x-ofx");
    public static readonly Format Files = new("multipart/form-data", "multipart/form-data");
    public static readonly Format Svg = new("image/svg+xml", "image/svg+xml; charset=utf-8", ".svg");
    public static readonly Format Html = new("text/html", HtmlPage.ContentType, ".html");
}

/// <summary>The formats that an endpoint answers in, the usual one first; just that one where its address already says it.</summary>
public sealed record Offers(IReadOnlyList<Format> Formats, bool ByAddress = false)
{
    public static readonly Offers JsonOnly = new([Format.Json]);

    /// <summary>The format that the caller wants most; null where it wants none of these. Problems are always JSON, so a caller that takes problems takes JSON.</summary>
    public Format? Wanted(HttpRequest request)
    {
        var accept = request.Headers.Accept;
        if (ByAddress || accept.Count == 0 || accept == "*/*" || accept == Formats[0].MediaType)
            return Formats[0];
        var wanted = MediaTypeHeaderValue.ParseList(accept);
        return wanted.Count == 0 ? Formats[0] : Best(wanted);
    }

    public static Offers Of(HttpContext context) => context.GetEndpoint()?.Metadata.GetMetadata<Offers>() ?? JsonOnly;

    private Format? Best(IList<MediaTypeHeaderValue> wanted) => Formats.Index()
        .Select(format => (format.Item, format.Index, Quality: QualityOf(format.Item, wanted)))
        .Where(format => format.Quality > 0)
        .OrderByDescending(format => format.Quality).ThenBy(format => format.Index)
        .Select(format => format.Item).FirstOrDefault();

    /// <summary>The quality that the most exact of the wanted types gives (RFC 9110 section 12.5.1).</summary>
    private static double QualityOf(Format format, IList<MediaTypeHeaderValue> wanted) => wanted
        .Where(type => type.MatchesMediaType(format.MediaType) || (format == Format.Json && type.MediaType == "application/problem+json"))
        .OrderByDescending(type => type.MatchesAllTypes ? 0 : type.MatchesAllSubTypes ? 1 : 2)
        .Select(type => type.Quality ?? 1).FirstOrDefault();
}

public static class FormatConventions
{
    public static TBuilder Offer<TBuilder>(this TBuilder builder, params IReadOnlyList<Format> formats) where TBuilder : IEndpointConventionBuilder => builder.WithMetadata(new Offers(formats));

    /// <summary>An address that ends in its format.</summary>
    public static TBuilder Always<TBuilder>(this TBuilder builder, Format format) where TBuilder : IEndpointConventionBuilder => builder.WithMetadata(new Offers([format], ByAddress: true));
}
