using Microsoft.Extensions.Primitives;

namespace PriceFloor.Api.Http;

/// <summary>Headers that restrict browsers, on every answer.</summary>
public static class SecurityHeaders
{
    /// <summary>An answer is data or a page without script, style or picture: it loads nothing and cannot be framed.</summary>
    private static readonly StringValues s_nothing = "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";

    /// <summary>The page that shows the contract has a style in itself.</summary>
    private static readonly StringValues s_docs =
        "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";

    private static readonly StringValues s_noSniff = "nosniff", s_noReferrer = "no-referrer", s_sameOrigin = "same-origin";

    public static void Add(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.XContentTypeOptions = s_noSniff;
        headers.ContentSecurityPolicy = context.Request.Path.StartsWithSegments("/docs", StringComparison.Ordinal) ? s_docs : s_nothing;
        headers["Referrer-Policy"] = s_noReferrer;
        headers["Cross-Origin-Resource-Policy"] = s_sameOrigin;
    }
}
