using System.Text;
using Microsoft.OpenApi;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi.Reading;
using Swashbuckle.AspNetCore.Swagger;

namespace PriceFloor.Api.OpenApi;

/// <summary>/openapi/v1.json, /openapi/v1.yaml and /docs to read it. They cost the start and other requests nothing.</summary>
public static class OpenApiPages
{
    /// <summary>
    /// The contract is written when it is first asked for and kept: it stays the same while the service runs, and anybody may ask for it,
    /// though writing it takes half a second and 50 MiB.
    /// </summary>
    public static void UseOpenApiPages(this WebApplication app)
    {
        var texts = new Lazy<Task<Texts>>(() => Task.Run(() => WriteAsync(app.Services)));
        app.Use((context, next) => !HttpMethods.IsGet(context.Request.Method) ? next(context)
            : context.Request.Path == "/docs/" ? Moved(context)
            : context.Request.Path == "/docs" ? AnswerAsync(context, HtmlPage.ContentType, texts.Value, kept => kept.Page)
            : context.Request.Path == "/openapi/v1.json" ? AnswerAsync(context, "application/json;charset=utf-8", texts.Value, kept => kept.Json)
            : context.Request.Path == "/openapi/v1.yaml" ? AnswerAsync(context, "text/yaml;charset=utf-8", texts.Value, kept => kept.Yaml)
            : next(context));
    }

    private static async Task<Texts> WriteAsync(IServiceProvider services)
    {
        await using var writers = OpenApiSetup.WritersOf(services);
        var document = writers.GetRequiredService<ISwaggerProvider>().GetSwagger(OpenApiSetup.DocumentName);
        return new Texts(
            Encoding.UTF8.GetBytes(await document.SerializeAsJsonAsync(OpenApiSpecVersion.OpenApi3_1)),
            Encoding.UTF8.GetBytes(await document.SerializeAsYamlAsync(OpenApiSpecVersion.OpenApi3_1)));
    }

    /// <summary>Links on the page are relative to /docs.</summary>
    private static Task Moved(HttpContext context)
    {
        context.Response.Redirect(context.Request.PathBase + "/docs", permanent: true);
        return Task.CompletedTask;
    }

    private static async Task AnswerAsync(HttpContext context, string contentType, Task<Texts> texts, Func<Texts, byte[]> choose)
    {
        var text = choose(await texts);
        (context.Response.ContentType, context.Response.ContentLength) = (contentType, text.Length);
        await context.Response.Body.WriteAsync(text, context.RequestAborted);
    }

    private sealed record Texts(byte[] Json, byte[] Yaml)
    {
        private readonly Lazy<byte[]> _page = new(() => ContractPage.Of(Json));

        public byte[] Page => _page.Value;
    }
}
