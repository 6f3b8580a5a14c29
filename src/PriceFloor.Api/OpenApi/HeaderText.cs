using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OpenApi;

/// <summary>The headers of answers: each is in the document once, with references from the answers that have it.</summary>
public static class HeaderText
{
    private const string RequestId = "X-Request-Id", RateLimit = "RateLimit", RateLimitPolicy = "RateLimit-Policy", RetryAfter = "Retry-After",
        AcceptEncoding = "Accept-Encoding", WwwAuthenticate = "WWW-Authenticate", RevisionTag = "RevisionETag", AnswerTag = "AnswerETag",
        Location = "Location", NextLink = "NextLink", Deprecation = "Deprecation", Sunset = "Sunset", RetirementLink = "RetirementLink";

    private static readonly Dictionary<string, (string Description, string Example)> s_headers = new()
    {
        [RequestId] = ("The request's id, which the log has too.", "0192f3a4b5c67d8e9fa0b1c2d3e4f506"),
        [RateLimit] = ("How many requests are left (r) and in how many seconds the count starts again (t).", "\"default\";r=59999;t=60"),
        [RateLimitPolicy] = ("How many requests (q) are allowed in how many seconds (w).", "\"default\";q=60000;w=60"),
        [RetryAfter] = ("Seconds to wait before asking again.", "2"),
        [AcceptEncoding] = ("Only if the body was refused for its Content-Encoding: the coding to use.", "identity"),
        [WwwAuthenticate] = ("How to authenticate.", "Bearer realm=\"PriceFloor\""),
        [RevisionTag] = ("The revision's number in quotes; send it as If-Match to write only over what was read.", "\"7\""),
        [AnswerTag] = ("Changes only when the answer does; send it as If-None-Match.", "\"0c4b8f6a2d1e9370\""),
        [Location] = ("The address of the new resource.", "/v1/designs/RB-014"),
        [NextLink] = ("The next page, with rel=\"next\"; absent on the last.", "</v1/designs?after=RB-014>; rel=\"next\""),
        [Deprecation] = ("Since when the address is deprecated (RFC 9745).", "@1803859200"),
        [Sunset] = ("When the address stops answering (RFC 8594).", "Wed, 01 Mar 2028 00:00:00 GMT"),
        [RetirementLink] = ("A page that says what to use instead, with rel=\"deprecation\" and rel=\"sunset\".", "</docs>; rel=\"deprecation\""),
    };

    /// <summary>The headers of one answer; a problem has no ETag, Location or Link of its own.</summary>
    public static Dictionary<string, IOpenApiHeader> Of(int status, Operation told, bool isPicture, Retirement? retirement, OpenApiDocument document)
    {
        var headers = new Dictionary<string, IOpenApiHeader>();
        void Add(string name, string? component = null) => headers[name] = new OpenApiHeaderReference(component ?? name, document);
        Add(RequestId);
        Add(RateLimit);
        Add(RateLimitPolicy);
        if (status == 304 || (status < 400 && status != 204 && (told.HasRevision || told.HasTag || isPicture)))
            Add("ETag", told.HasRevision ? RevisionTag : AnswerTag);
        if (status == 201 && told.HasLocation)
            Add(Location);
        if (status == 200 && told.IsPage)
            Add("Link", NextLink);
        if (status == 401)
            Add(WwwAuthenticate);
        if (status == 415)
            Add(AcceptEncoding);
        if (status is 429 or 503)
            Add(RetryAfter);
        if (retirement is null)
            return headers;
        Add(Deprecation);
        Add("Link", RetirementLink);
        if (retirement.Sunset is not null)
            Add(Sunset);
        return headers;
    }

    /// <summary>Puts the headers that are referred to, and no others, into the document.</summary>
    public static void Define(OpenApiDocument document)
    {
        var used = (from response in Responses(document)
                    from header in response.Headers!.Values
                    select ((OpenApiHeaderReference)header).Reference.Id!).ToHashSet();
        document.Components!.Headers = s_headers.Where(header => used.Contains(header.Key)).OrderBy(header => header.Key, StringComparer.Ordinal)
            .ToDictionary(header => header.Key, header => (IOpenApiHeader)new OpenApiHeader
            {
                Description = header.Value.Description,
                Schema = new OpenApiSchema { Type = JsonSchemaType.String },
                Example = JsonValue.Create(header.Value.Example),
            });
    }

    public static IEnumerable<OpenApiResponse> Responses(OpenApiDocument document) =>
        from path in document.Paths.Values
        from operation in path.Operations!.Values
        from response in operation.Responses!.Values
        select (OpenApiResponse)response;
}
