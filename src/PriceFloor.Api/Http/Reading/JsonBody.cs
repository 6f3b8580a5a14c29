using System.Reflection;
using System.Text.Json;
using FluentValidation;
using Microsoft.AspNetCore.Http.Metadata;
using PriceFloor.Api.Configuration;

namespace PriceFloor.Api.Http.Reading;

/// <summary>
/// A JSON body: read, checked against its schema and its validator. A type without a validator fails closed.
/// </summary>
public sealed class JsonBody<T> : IInput, IEndpointParameterMetadataProvider where T : class
{
    private static readonly BodySchema s_shape = BodySchema.Of(typeof(T));

    private readonly T? _value;

    private JsonBody(T? value, Problem? problem) => (_value, Problem) = (value, problem);

    public Problem? Problem { get; }

    public T Value => _value ?? throw new InvalidOperationException("A body with a problem reached its handler.");

    public static async ValueTask<JsonBody<T>?> BindAsync(HttpContext context, ParameterInfo parameter)
    {
        if (ContentCoding.Against(context.Request) is { } coded)
            return new(null, coded);
        if (!Format.Json.IsSentBy(context.Request))
            return new(null, Problem.Of(ProblemTypes.MediaType, ProblemTypes.MediaType.Cure));
        var most = context.RequestServices.GetRequiredService<Settings>().BodyBytes;
        if (await RequestBytes.ReadAllAsync(context, most) is not { } body)
            return new(null, Problem.Of(ProblemTypes.TooLarge, FormattableString.Invariant($"The body is larger than {most} bytes.")));
        var outcome = Read(body, context.RequestServices.GetRequiredService<IValidator<T>>());
        return outcome.Found is { } value ? new(value, null) : new(null, Problem.Of(outcome.Faults));
    }

    public static void PopulateMetadata(ParameterInfo parameter, EndpointBuilder builder) => builder.Metadata.Add(new BodyMetadata(typeof(T)));

    /// <summary>Reads a body that is already in memory: every fault, or the first thing that cannot be read.</summary>
    public static Outcome<T> Read(byte[] body, IValidator<T> validator)
    {
        body = body.AsSpan().StartsWith("\uFEFF"u8) ? JsonText.WithoutMark(body).ToArray() : body;
        if (body.AsSpan().IndexOfAnyExcept(" \t\r\n"u8) < 0)
            return RequestFault.Unreadable(
                new InputError { Pointer = "#", Code = InputCodes.Empty, Detail = "The body is empty; send a JSON object.", Line = 1, Column = 1 });
        try
        {
            var faults = BodyReader.Check(body, s_shape);
            var value = JsonSerializer.Deserialize<T>(body, WireJson.Options)!;
            var all = validator is NoRules<T> ? faults : [.. faults, .. Rules.Faults(validator, value, faults)];
            return all.Count == 0 ? value : all.Select(error => (Fault)RequestFault.Invalid(error)).ToList();
        }
        catch (UnreadableException e)
        {
            return RequestFault.Unreadable(e.Error);
        }
    }
}

/// <summary>A value read from a request, or its problem; a filter answers the problem before the handler runs.</summary>
public interface IInput
{
    Problem? Problem { get; }
}

/// <summary>Names the body of an endpoint for the OpenAPI document.</summary>
public sealed record BodyMetadata(Type Type);
