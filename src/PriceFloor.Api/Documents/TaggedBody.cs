using System.Security.Cryptography;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Documents;

/// <summary>A body with an ETag that changes exactly when the body does.</summary>
public sealed record TaggedBody(byte[] Body, string Tag)
{
    public static TaggedBody Of(byte[] body) => new(body, $"\"{Convert.ToHexStringLower(SHA256.HashData(body).AsSpan(0, 16))}\"");

    /// <summary>The body, 304 if the caller already has it, or 412 if the caller asks for another tag.</summary>
    public IResult Answer(HttpContext context, Format format)
    {
        var read = Preconditions.Of(context.Request);
        return read.Found is not { } preconditions ? Problem.Of(read.Faults)
            : preconditions.IsStale(Tag) ? Problem.Of(ProblemTypes.StaleRevision, $"The answer has the ETag {Tag} now.")
            : new Sent(this, format, preconditions.IsKnown(Tag));
    }

    /// <summary>The body of an answer to a question that was sent: without a tag, since nothing lies at its address.</summary>
    public static IResult Unnamed(byte[] body, Format format) => new Sent(new TaggedBody(body, ""), format, known: false);

    private sealed class Sent(TaggedBody tagged, Format format, bool known) : IResult
    {
        public async Task ExecuteAsync(HttpContext httpContext)
        {
            var response = httpContext.Response;
            response.StatusCode = known ? StatusCodes.Status304NotModified : StatusCodes.Status200OK;
            if (tagged.Tag.Length > 0)
                response.Headers.ETag = tagged.Tag;
            response.Headers.CacheControl = "private, no-cache";
            if (format == Format.Svg || format == Format.Html)
                // it needs nothing from elsewhere
                response.Headers.ContentSecurityPolicy =
                    "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";
            if (known)
                return;
            response.ContentType = format.ContentType;
            response.ContentLength = tagged.Body.Length;
            await AnswerBlocks.WriteAsync(response, tagged.Body, httpContext.RequestAborted);
        }
    }
}
