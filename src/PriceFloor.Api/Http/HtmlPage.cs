using System.Net;

namespace PriceFloor.Api.Http;

/// <summary>A page for people: one file, nothing loaded from anywhere.</summary>
public static class HtmlPage
{
    public const string ContentType = "text/html; charset=utf-8";

    public static string Of(string title, string body) =>
        "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">"
        + $"<title>{WebUtility.HtmlEncode(title)} - PriceFloor</title></head><body><h1>{WebUtility.HtmlEncode(title)}</h1>{body}</body></html>";

    public static IResult Answer(string title, string body) => TypedResults.Content(Of(title, body), ContentType);
}
