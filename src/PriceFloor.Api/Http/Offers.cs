using Microsoft.Net.Http.Headers;

namespace PriceFloor.Api.Http;

/// <summary>The formats that an endpoint answers in, the default first; only one if its address already names it.</summary>
public sealed record Offers(IReadOnlyList<Format> Formats, bool ByAddress = false)
{
    public static readonly Offers JsonOnly = new([Format.Json]);

    /// <summary>
    /// The format that the caller prefers; null if it accepts none of these. Problems are always JSON, so a caller that accepts problems accepts
    /// JSON.
    /// </summary>
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

    /// <summary>The quality of the most specific matching type (RFC 9110 section 12.5.1).</summary>
    private static double QualityOf(Format format, IList<MediaTypeHeaderValue> wanted) => wanted
        .Where(type => type.MatchesMediaType(format.MediaType) || (format == Format.Json && type.MediaType == "application/problem+json"))
        .OrderByDescending(type => type.MatchesAllTypes ? 0 : type.MatchesAllSubTypes ? 1 : 2)
        .Select(type => type.Quality ?? 1).FirstOrDefault();
}
