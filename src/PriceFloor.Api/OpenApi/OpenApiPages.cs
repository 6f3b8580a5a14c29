using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi.Reading;
using Serilog;

namespace PriceFloor.Api.OpenApi;

/// <summary>/openapi/v1.json, /openapi/v1.yaml and /docs to read it. They cost the start and other requests nothing.</summary>
public static class OpenApiPages
{
    /// <summary>The contract is read when it is first asked for and kept: it stays the same while the service runs.</summary>
    public static void UseOpenApiPages(this WebApplication app)
    {
        var texts = new Lazy<Task<ContractTexts>>(() => Task.Run(() => TextsAsync(app.Services)));
        var page = new Lazy<Task<byte[]>>(async () => ContractPage.Of((await texts.Value).Json));
        app.Use((context, next) => !HttpMethods.IsGet(context.Request.Method) ? next(context)
            : context.Request.Path == "/docs/" ? Moved(context)
            : context.Request.Path == "/docs" ? AnswerAsync(context, HtmlPage.ContentType, page.Value, text => text)
            : context.Request.Path == "/openapi/v1.json" ? AnswerAsync(context, "application/json;charset=utf-8", texts.Value, kept => kept.Json)
            : context.Request.Path == "/openapi/v1.yaml" ? AnswerAsync(context, "text/yaml;charset=utf-8", texts.Value, kept => kept.Yaml)
            : next(context));
    }

    /// <summary>As the build left it; written from the code if the build did not, or wrote it for another program.</summary>
    internal static async Task<ContractTexts> TextsAsync(IServiceProvider services)
    {
        var baked = services.GetRequiredService<BakedContract>();
        if ((baked.Read() ?? BakedContract.InsideTheProgram())?.Below(services.GetRequiredService<Settings>().PathBase) is { } texts)
            return texts;
        Log.Information("The OpenAPI document is written from the code, because {Folder} does not have it for this program and path", baked.Folder);
        return await ContractTexts.WrittenBy(services);
    }

    /// <summary>Links on the page are relative to /docs.</summary>
    private static Task Moved(HttpContext context)
    {
        context.Response.Redirect(context.Request.PathBase + "/docs", permanent: true);
        return Task.CompletedTask;
    }

    private static async Task AnswerAsync<T>(HttpContext context, string contentType, Task<T> kept, Func<T, byte[]> choose)
    {
        var text = choose(await kept);
        (context.Response.ContentType, context.Response.ContentLength) = (contentType, text.Length);
        await context.Response.Body.WriteAsync(text, context.RequestAborted);
    }
}
