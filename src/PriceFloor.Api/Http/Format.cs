using Microsoft.Net.Http.Headers;

namespace PriceFloor.Api.Http;

/// <summary>A format of requests or answers.</summary>
/// <param name="MediaType">Its name in Accept.</param>
/// <param name="ContentType">Its name in the answer.</param>
/// <param name="Suffix">The end of an address that asks for it when no Accept can be sent, such as for an image in a page.</param>
public sealed record Format(string MediaType, string ContentType, string? Suffix = null)
{
    public static readonly Format Json = new("application/json", "application/json");
    public static readonly Format MergePatch = new("application/merge-patch+json", "application/merge-patch+json");
    public static readonly Format Ndjson = new("application/x-ndjson", "application/x-ndjson");
    public static readonly Format Csv = new("text/csv", "text/csv; charset=utf-8");
    public static readonly Format Xml = new("application/xml", "application/xml");
    public static readonly Format Ofx = new("application/x-ofx", "application/x-ofx");
    public static readonly Format Files = new("multipart/form-data", "multipart/form-data");
    public static readonly Format Xlsx =
        new("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet");
    public static readonly Format Svg = new("image/svg+xml", "image/svg+xml; charset=utf-8", ".svg");
    public static readonly Format Html = new("text/html", HtmlPage.ContentType, ".html");

    /// <summary>Whether a request sends its body in this format, as UTF-8.</summary>
    public bool IsSentBy(HttpRequest request) => request.ContentType == MediaType || (MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
        && type.MediaType.Equals(MediaType, StringComparison.OrdinalIgnoreCase)
        && (!type.Charset.HasValue || type.Charset.Value!.Trim('"').Equals("utf-8", StringComparison.OrdinalIgnoreCase)));
}

public static class FormatConventions
{
    public static TBuilder Offer<TBuilder>(this TBuilder builder, params IReadOnlyList<Format> formats) where TBuilder : IEndpointConventionBuilder =>
        builder.WithMetadata(new Offers(formats));

    /// <summary>An address that ends in its format.</summary>
    public static TBuilder Always<TBuilder>(this TBuilder builder, Format format) where TBuilder : IEndpointConventionBuilder =>
        builder.WithMetadata(new Offers([format], ByAddress: true));
}
