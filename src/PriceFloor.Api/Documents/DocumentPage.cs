using System.Text;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Documents;

/// <summary>A page of documents, with the link to the next.</summary>
public static class DocumentPage
{
    public static IResult Of(IReadOnlyList<string> items, string? next, HttpRequest request)
    {
        if (next is not null)
            LinkToNext(request, next);
        request.HttpContext.Response.Headers.CacheControl = "private, no-cache";
        var text = $"{{\"items\":[{string.Join(',', items)}],\"next\":{(next is null ? "null" : $"\"{next}\"")}}}";
        return new RawJson(Encoding.UTF8.GetBytes(text));
    }

    /// <summary>The link to the next page as a header (RFC 8288).</summary>
    public static void LinkToNext(HttpRequest request, string next) => LinkToNext(request, ("after", next));

    /// <summary>The same if another parameter says where to continue.</summary>
    public static void LinkToNext(HttpRequest request, (string Name, string Value) from)
    {
        var query = QueryString.Create(request.Query.Where(pair => pair.Key != from.Name && pair.Key != "after").Append(new(from.Name, from.Value)));
        request.HttpContext.Response.Headers.Link = $"<{request.PathBase}{request.Path.ToUriComponent()}{query}>; rel=\"next\"";
    }

    private sealed class RawJson(byte[] body) : IResult
    {
        public async Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.ContentType = "application/json";
            httpContext.Response.ContentLength = body.Length;
            await AnswerBlocks.WriteAsync(httpContext.Response, body, httpContext.RequestAborted);
        }
    }
}
