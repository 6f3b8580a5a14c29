using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using PriceFloor.Api.Running;
using PriceFloor.Pricing;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PriceFloor.Api.Http.OpenApi;

/// <summary>What stands once in the document: tags, the server, headers, examples of problems, the inline form of a design.</summary>
public sealed class DocumentTextFilter(Settings settings) : IDocumentFilter
{
    public const string InlineDesign = "InlineDesign";
    public const string NamedDesign = "NamedDesign";

    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        swaggerDoc.Servers = [new OpenApiServer { Url = settings.PathBase + "/", Description = "This server." }];
        HeaderText.Define(swaggerDoc);
        ProblemExamples.Define(swaggerDoc);
        swaggerDoc.Tags = Operations.Tags.Select(tag => new OpenApiTag { Name = tag.Key, Description = tag.Value }).ToHashSet();
        var design = (OpenApiSchema)swaggerDoc.Components!.Schemas![nameof(Design)];
        var inline = (OpenApiSchema)design.CreateShallowCopy();
        inline.Required = design.Required!.Where(name => name != "profile").ToHashSet();
        inline.Description = "A design without a profile's key: the request has the profile beside it.";
        swaggerDoc.Components.Schemas[InlineDesign] = inline;
        var named = (OpenApiSchema)design.CreateShallowCopy();
        named.Required = design.Required!.Append("key").ToHashSet();
        named.Description = "A design with its key, as GET gives it.";
        named.Properties = new Dictionary<string, IOpenApiSchema>(design.Properties!)
        {
            ["key"] = new OpenApiSchema { Type = JsonSchemaType.String, MinLength = 1, MaxLength = Limits.KeyLength, Description = "The design's key.", Examples = [JsonValue.Create("RB-014")] },
        };
        swaggerDoc.Components.Schemas[NamedDesign] = named;
    }
}
