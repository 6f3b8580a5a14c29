using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.Http.Metadata;

namespace PriceFloor.Api.Http;

/// <summary>A successful answer as JSON. It is written with its length, the same for HEAD.</summary>
public sealed class JsonAnswer<T>(T value) : IResult, IEndpointMetadataProvider
{
    private static readonly JsonTypeInfo<T> s_type = (JsonTypeInfo<T>)WireJson.Options.GetTypeInfo(typeof(T));

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(value, s_type);
        var response = httpContext.Response;
        response.ContentType = JsonAnswer.ContentType;
        response.ContentLength = body.Length;
        return AnswerBlocks.WriteAsync(response, body, httpContext.RequestAborted);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(T), [Format.Json.MediaType]));
}

public static class JsonAnswer
{
    public const string ContentType = "application/json; charset=utf-8";

    public static JsonAnswer<T> Of<T>(T value) => new(value);
}
