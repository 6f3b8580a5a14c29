using System.Text.Json.Serialization;

namespace PriceFloor.Api.FirstContact;

/// <summary>Lets programs that look for services find this one (RFC 9727), as a set of links (RFC 9264).</summary>
public static class ApiCatalogRoutes
{
    public const string Path = "/.well-known/api-catalog";

    private const string ContentType = "application/linkset+json; profile=\"https://www.rfc-editor.org/info/rfc9727\"";

    /// <summary>Absolute addresses, as RFC 9264 requires: whoever keeps the set need not remember its source.</summary>
    public static IResult Get(HttpContext context)
    {
        var request = context.Request;
        var root = $"{request.Scheme}://{request.Host}{request.PathBase}";
        context.Response.Headers.CacheControl = "no-cache";
        context.Response.Headers.Link = $"<{root}{Path}>; rel=\"api-catalog\"";
        return TypedResults.Json(Of(root, WelcomeLinks.Under(root)), contentType: ContentType);
    }

    private static LinkSet Of(string root, WelcomeLinks links) => new(
    [
        new LinkContext(root + Path) { Item = [new Target(root + "/v1")] },
        new LinkContext(root + "/v1")
        {
            ServiceDesc = [new Target(links.Openapi, "application/json"), new Target(root + "/openapi/v1.yaml", "application/yaml")],
            ServiceDoc = [new Target(links.Docs, "text/html")],
            Status = [new Target(links.Health, "application/json")],
        },
    ]);

    private sealed record LinkSet(IReadOnlyList<LinkContext> Linkset);

    private sealed record LinkContext(string Anchor)
    {
        [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
        public IReadOnlyList<Target>? Item { get; init; }

        [JsonPropertyName("service-desc")]
        [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
        public IReadOnlyList<Target>? ServiceDesc { get; init; }

        [JsonPropertyName("service-doc")]
        [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
        public IReadOnlyList<Target>? ServiceDoc { get; init; }

        [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
        public IReadOnlyList<Target>? Status { get; init; }
    }

    private sealed record Target(string Href, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Type = null);
}
