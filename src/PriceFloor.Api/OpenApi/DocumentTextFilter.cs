using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using PriceFloor.Api.Configuration;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PriceFloor.Api.OpenApi;

/// <summary>Parts that the document has once: tags, the server, headers, examples of problems, the inline form of a design.</summary>
public sealed class DocumentTextFilter(Settings settings) : IDocumentFilter
{
    public const string InlineDesign = "InlineDesign";
    public const string InlinePlan = "InlinePlan";
    public const string NamedDesign = "NamedDesign";
    public const string Deletion = "Deletion";

    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        swaggerDoc.Servers = [new OpenApiServer { Url = settings.PathBase + "/", Description = "This server." }];
        HeaderText.Define(swaggerDoc);
        ProblemExamples.Define(swaggerDoc);
        swaggerDoc.Tags = Tags.All.Select(tag => new OpenApiTag { Name = tag.Key, Description = tag.Value }).ToHashSet();
        var design = (OpenApiSchema)swaggerDoc.Components!.Schemas![nameof(Design)];
        swaggerDoc.Components.Schemas[InlineDesign] = Inline(design, "design");
        swaggerDoc.Components.Schemas[InlinePlan] = Inline((OpenApiSchema)swaggerDoc.Components.Schemas[nameof(Plan)], "plan");
        var named = (OpenApiSchema)design.CreateShallowCopy();
        named.Required = design.Required!.Append("key").ToHashSet();
        named.Description = "A design with its key, as GET gives it.";
        named.Properties = new Dictionary<string, IOpenApiSchema>(design.Properties!)
        {
            ["key"] = new OpenApiSchema
            {
                Type = JsonSchemaType.String,
                MinLength = 1,
                MaxLength = Limits.KeyLength,
                Description = "The design's key.",
                Examples = [JsonValue.Create("RB-014")],
            },
        };
        swaggerDoc.Components.Schemas[NamedDesign] = named;
        swaggerDoc.Components.Schemas[Deletion] = DeletionOf();
    }

    private static OpenApiSchema Inline(OpenApiSchema document, string noun)
    {
        var inline = (OpenApiSchema)document.CreateShallowCopy();
        inline.Required = document.Required!.Where(name => name != "profile").ToHashSet();
        inline.Description = $"A {noun} without a profile's key: the request has the profile itself.";
        return inline;
    }

    private static OpenApiSchema DeletionOf() => new()
    {
        Type = JsonSchemaType.Object,
        Description = "A revision that deleted its document; earlier ones stay.",
        Required = new HashSet<string> { "revision", "savedAt", "deleted" },
        AdditionalPropertiesAllowed = false,
        Properties = new Dictionary<string, IOpenApiSchema>
        {
            ["key"] = new OpenApiSchema { Type = JsonSchemaType.String, Description = "The document's key.", Examples = [JsonValue.Create("main")] },
            ["sku"] = new OpenApiSchema
            {
                Type = JsonSchemaType.String,
                Description = "For a listed price: the design.",
                Examples = [JsonValue.Create("RB-014")],
            },
            ["channel"] = new OpenApiSchema
            {
                Type = JsonSchemaType.String,
                Description = "For a listed price: the channel.",
                Examples = [JsonValue.Create("web")],
            },
            ["alias"] = new OpenApiSchema
            {
                Type = JsonSchemaType.String,
                Description = "For the listed price of one of the design's other names: the name.",
                Examples = [JsonValue.Create("RB-014 blue")],
            },
            ["revision"] = new OpenApiSchema
            {
                Type = JsonSchemaType.Integer,
                Format = "int64",
                Description = "Number of the revision.",
                Examples = [JsonValue.Create(2)],
            },
            ["savedAt"] = new OpenApiSchema
            {
                Type = JsonSchemaType.String,
                Format = "date-time",
                Description = "When it was deleted.",
                Examples = [JsonValue.Create("2027-01-02T09:00:00.000000Z")],
            },
            ["deleted"] = new OpenApiSchema { Type = JsonSchemaType.Boolean, Description = "Always true.", Enum = [JsonValue.Create(true)] },
        },
    };
}
