using Microsoft.OpenApi;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PriceFloor.Api.OpenApi;

/// <summary>The problems that an operation can answer with, each kind in the response of its status.</summary>
internal static class ProblemAnswers
{
    public static IEnumerable<ProblemType> Of(Operation told, IEnumerable<object> metadata, bool hasBody, bool hasParameters,
        OperationFilterContext context)
    {
        var needs = metadata.OfType<NeedsScope>().FirstOrDefault();
        List<ProblemType> types = [ProblemTypes.UnreadableRequest, ProblemTypes.TooManyRequests, ProblemTypes.Busy,
            ProblemTypes.Internal, .. told.Problems];
        if (needs is not null)
            types.AddRange([ProblemTypes.NoKey, ProblemTypes.NotAcceptable]);
        if (needs?.Scope is not null)
            types.AddRange([ProblemTypes.DamagedDocument, ProblemTypes.KeyNotAllowed]);
        if (context.ApiDescription.RelativePath!.Contains('{', StringComparison.Ordinal))
            types.Add(ProblemTypes.NotFound);
        if (context.ApiDescription.HttpMethod == "GET" && OperationText.IsTagged(told))
            types.Add(ProblemTypes.StaleRevision);
        if (hasBody)
            types.AddRange([ProblemTypes.TooLarge, ProblemTypes.MediaType]);
        if (hasBody || hasParameters)
            types.Add(ProblemTypes.InvalidInput);
        return types;
    }

    public static OpenApiResponse Response(IReadOnlyList<ProblemType> types, OperationFilterContext context) => new()
    {
        Description = string.Join("; ", types.Select(type => $"{type.Slug}: {type.Title}")) + ".",
        Content = new Dictionary<string, IOpenApiMediaType>
        {
            ["application/problem+json"] = new OpenApiMediaType
            {
                Schema = context.SchemaGenerator.GenerateSchema(typeof(ProblemBody), context.SchemaRepository),
                Examples = types.DistinctBy(type => type.Slug)
                    .ToDictionary(type => type.Slug, type => (IOpenApiExample)new OpenApiExampleReference(type.Slug, context.Document)),
            },
        },
    };
}
