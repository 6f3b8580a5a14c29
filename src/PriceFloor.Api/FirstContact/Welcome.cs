using System.Net;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.FirstContact;

/// <summary>The root of the service: short JSON for programs, a plain page for browsers.</summary>
public static class Welcome
{
    private const string Summary = "The lowest price that keeps a studio and its maker going for the year.";
    private const string Key =
        "Calls under /v1 need the header \"Authorization: Bearer pf_...\"; the first key is in the file first-admin-key in the data folder.";

    public static string Version => VersionAnswer.Here.Version;

    public static IResult Get(HttpContext context)
    {
        var links = WelcomeLinks.Under(context.Request.PathBase);
        context.Response.Headers.CacheControl = "no-cache";
        context.Response.Headers.Vary = "Accept";
        context.Response.Headers.Link = $"<{links.Openapi}>; rel=\"service-desc\"; type=\"application/json\", <{links.Docs}>; rel=\"service-doc\"; "
            + $"type=\"text/html\", <{links.ApiCatalog}>; rel=\"api-catalog\"";
        return Offers.Of(context).Wanted(context.Request) == Format.Html
            ? HtmlPage.Answer("PriceFloor", Page(links))
            : JsonAnswer.Of(Answer(links));
    }

    public static WelcomeAnswer Answer(WelcomeLinks links) => new("PriceFloor", Version, Summary, Key, links);

    private static string Page(WelcomeLinks links) =>
        $"<p>{WebUtility.HtmlEncode(Summary)} Version {Version}.</p><ul>"
        + Item(links.Docs, "The contract, to read and to try")
        + Item(links.Openapi, "The contract as an OpenAPI document")
        + Item(links.Problems, "Problems: what they mean and how to fix them")
        + Item(links.Health, "Can the service answer?")
        + Item(links.ApiCatalog, "These links for programs")
        + $"</ul><p>The address for price checks is <code>{WebUtility.HtmlEncode(links.PriceChecks)}</code>. {WebUtility.HtmlEncode(Key)}</p>"
        + "<p>Figures are not tax or legal advice.</p>";

    private static string Item(string address, string words) =>
        $"<li><a href=\"{WebUtility.HtmlEncode(address)}\">{WebUtility.HtmlEncode(words)}</a></li>";
}

/// <summary>The service introduces itself to whoever finds its address: what it is and where to read on.</summary>
/// <param name="Name">The name of the service.</param>
/// <param name="Version">The running version.</param>
/// <param name="Summary">What it does, in a sentence.</param>
/// <param name="Key">How to authenticate calls under /v1.</param>
/// <param name="Links">Where to read on.</param>
public sealed record WelcomeAnswer(string Name, string Version, string Summary, string Key, WelcomeLinks Links);

/// <summary>Addresses of this service, as paths.</summary>
/// <param name="Docs">The contract to read and to try.</param>
/// <param name="Openapi">The contract as an OpenAPI document; the same with .yaml.</param>
/// <param name="Problems">Every problem: what it means and how to fix it.</param>
/// <param name="Health">Whether the service can answer.</param>
/// <param name="PriceChecks">The question that shops ask most; needs a key.</param>
/// <param name="ApiCatalog">The same links for programs that look for services (RFC 9727).</param>
public sealed record WelcomeLinks(string Docs, string Openapi, string Problems, string Health, string PriceChecks, string ApiCatalog)
{
    public static WelcomeLinks Under(string pathBase) =>
        new(pathBase + "/docs", pathBase + "/openapi/v1.json", pathBase + "/problems", pathBase + "/health/ready", pathBase + "/v1/price-checks",
            pathBase + ApiCatalogRoutes.Path);
}
