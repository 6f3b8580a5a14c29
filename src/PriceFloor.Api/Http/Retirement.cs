using System.Globalization;
using Microsoft.Extensions.Primitives;

namespace PriceFloor.Api.Http;

/// <summary>A deprecated address: since when (RFC 9745), when it stops answering (RFC 8594), and a page that explains it.</summary>
public sealed record Retirement
{
    public Retirement(DateTimeOffset since, DateTimeOffset? sunset, string link)
    {
        if (sunset < since)
            throw new ArgumentException("An address cannot stop answering before it is deprecated.", nameof(sunset));
        (Since, Sunset, Link) = (since, sunset, link);
    }

    public DateTimeOffset Since { get; }

    /// <summary>Null until an end is decided.</summary>
    public DateTimeOffset? Sunset { get; }

    /// <summary>A page that says what to use instead.</summary>
    public string Link { get; }

    /// <summary>A date of structured fields (RFC 9651): seconds since 1970 after an @.</summary>
    public string DeprecationField => string.Create(CultureInfo.InvariantCulture, $"@{Since.ToUnixTimeSeconds()}");

    /// <summary>A date of HTTP (RFC 9110): Sunset is older than structured fields.</summary>
    public string? SunsetField => Sunset?.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Adds the headers to every answer of such an address, problems too; last, so no handler's own Link is lost.</summary>
    public static Task Tell(HttpContext context, RequestDelegate next)
    {
        context.GetEndpoint()?.Metadata.GetMetadata<Retirement>()?.TellBefore(context.Response);
        return next(context);
    }

    private void TellBefore(HttpResponse response) => response.OnStarting(() =>
    {
        WriteTo(response.Headers);
        return Task.CompletedTask;
    });

    private void WriteTo(IHeaderDictionary headers)
    {
        headers["Deprecation"] = DeprecationField;
        headers.Link = StringValues.Concat(headers.Link, $"<{Link}>; rel=\"deprecation\"; type=\"text/html\"");
        if (SunsetField is { } sunset)
        {
            headers["Sunset"] = sunset;
            headers.Link = StringValues.Concat(headers.Link, $"<{Link}>; rel=\"sunset\"; type=\"text/html\"");
        }
    }
}

public static class RetirementConventions
{
    /// <summary>The address is deprecated since that time and stops answering at sunset; link is a page that says what to use instead.</summary>
    public static TBuilder Retiring<TBuilder>(this TBuilder builder, DateTimeOffset since, DateTimeOffset? sunset,
        string link) where TBuilder : IEndpointConventionBuilder =>
            builder.WithMetadata(new Retirement(since, sunset, link));
}
