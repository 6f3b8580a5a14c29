using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using System.Xml.XPath;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.OpenApi;
using PriceFloor.Api.Http.Reading;
using Swashbuckle.AspNetCore.Swagger;

namespace PriceFloor.Api.OpenApi;

/// <summary>The OpenAPI 3.1 document, written from the code. It is committed, and served by <see cref="OpenApiPages"/>.</summary>
public static partial class OpenApiSetup
{
    /// <summary>The contract's version, as in the path: /v1.</summary>
    public const string ContractVersion = "1";

    public const string DocumentName = "v1";

    /// <summary>Keeps the parts of the service for the container that writes the document, if no build has left it beside the program.</summary>
    public static void UseOpenApi(this WebApplicationBuilder builder) =>
        builder.Services.AddSingleton(new Parts(builder.Services)).AddSingleton(BakedContract.BesideTheProgram);

    /// <summary>The document as YAML, for the file in openapi/.</summary>
    public static async Task<int> WriteOpenApiAsync(this WebApplication app, TextWriter output)
    {
        EndPipeline(app);
        await output.WriteAsync(BakedContract.InsideTheProgram() is { } inside ? Encoding.UTF8.GetString(inside.Yaml) : await TextOf(app.Services));
        return 0;
    }

    /// <summary>The document in both formats, for the files beside the program.</summary>
    public static async Task<int> BakeOpenApiAsync(this WebApplication app, string folder, TextWriter output)
    {
        EndPipeline(app);
        new BakedContract(folder).Write(await ContractTexts.WrittenBy(app.Services));
        await output.WriteLineAsync($"The OpenAPI document is in {folder}.");
        return 0;
    }

    /// <summary>The document knows endpoints only once the end of the pipeline is in place, which starting does by itself.</summary>
    private static void EndPipeline(WebApplication app) => app.UseEndpoints(_ => { });

    public static async Task<string> TextOf(IServiceProvider services, CancellationToken cancellation = default)
    {
        await using var writers = WritersOf(services);
        return await writers.GetRequiredService<ISwaggerProvider>().GetSwagger(DocumentName)
            .SerializeAsYamlAsync(OpenApiSpecVersion.OpenApi3_1, cancellation);
    }

    /// <summary>
    /// The writer of the document: the same parts and its own, in a container that is made when the document is first asked for. None of its own
    /// parts is loaded before.
    /// </summary>
    internal static ServiceProvider WritersOf(IServiceProvider services)
    {
        var writers = new ServiceCollection();
        writers.Add(services.GetRequiredService<Parts>().All);
        writers.AddSingleton(services.GetRequiredService<EndpointDataSource>());
        writers.AddSingleton(services.GetRequiredService<ILoggerFactory>());
        writers.AddEndpointsApiExplorer();
        writers.AddSwaggerGen(swagger =>
        {
            swagger.SwaggerDoc(DocumentName, new OpenApiInfo
            {
                Title = "PriceFloor",
                Version = ContractVersion,
                Summary = "The lowest price that keeps a studio and its maker going for the year.",
                Description = "Stores cost profiles, designs and channels and answers floor-price and price-check requests. Money, "
                    + "rates and quantities are exact JSON numbers. Figures are not tax or legal advice: local law and a licensed adviser decide.",
                Contact = new OpenApiContact { Name = "The PriceFloor authors" },
                License = new OpenApiLicense { Name = "MIT", Identifier = "MIT" },
            });
            swagger.SupportNonNullableReferenceTypes();
            foreach (var file in Directory.EnumerateFiles(AppContext.BaseDirectory, "PriceFloor.*.xml").Order(StringComparer.Ordinal))
                swagger.IncludeXmlComments(() => CommentsIn(file));
            swagger.AddSecurityDefinition("key", new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.Http,
                Scheme = "bearer",
                Description = "A key of this service: Authorization: Bearer pf_...",
            });
            swagger.MapType<decimal>(() => new OpenApiSchema { Type = JsonSchemaType.Number, Format = "decimal" });
            swagger.MapType<decimal?>(() => new OpenApiSchema { Type = JsonSchemaType.Number | JsonSchemaType.Null, Format = "decimal" });
            swagger.MapType<Code>(() => new OpenApiSchema { Type = JsonSchemaType.String, MinLength = 1 });
            swagger.SchemaFilter<SchemaText>();
            swagger.OperationFilter<OperationText>();
            swagger.DocumentFilter<DocumentTextFilter>();
            swagger.DocumentFilter<ScalarExamples>();
            swagger.DocumentFilter<SharedProblems>();
            swagger.DocumentFilter<SharedExamples>();
        });
        return writers.BuildServiceProvider();
    }

    private sealed record Parts(IServiceCollection All);

    /// <summary>A comment is one line in the contract, however it is wrapped in the code.</summary>
    private static XPathDocument CommentsIn(string file)
    {
        var comments = XDocument.Load(file, LoadOptions.PreserveWhitespace);
        foreach (var text in comments.DescendantNodes().OfType<XText>())
            text.Value = LineBreak().Replace(text.Value, " ");
        return new XPathDocument(comments.CreateReader());
    }

    [GeneratedRegex(@"\s*\n\s*", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex LineBreak();
}
