using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OpenApi;

/// <summary>
/// A main case of an operation: a request and its answer. Both are in the contract under its name; a test sends the request and compares.
/// </summary>
/// <param name="Name">The name of both, in kebab-case.</param>
/// <param name="Summary">What is special about it, in a few words.</param>
/// <param name="Request">The body of the request; null if there is none.</param>
/// <param name="Answer">The JSON of the answer.</param>
public sealed record MainCase(string Name, string Summary, Example? Request, Example Answer)
{
    /// <summary>The format of the body.</summary>
    public Format Format { get; init; } = Format.Json;

    /// <summary>In a form of several files: each by the name of its field. Else the request is one file.</summary>
    public IReadOnlyDictionary<string, Example> Parts { get; init; } = new Dictionary<string, Example>();

    /// <summary>Its values for parameters; the others keep their own examples, or are left out if they are optional.</summary>
    public IReadOnlyDictionary<string, string> At { get; init; } = new Dictionary<string, string>();

    /// <summary>The problem in the answer; null if the answer is good.</summary>
    public ProblemType? Problem { get; init; }

    private IOpenApiExample Showing(JsonNode? value) => new OpenApiExample { Summary = Summary, Value = value };

    /// <summary>Puts the bodies of the cases into an operation's request, by format.</summary>
    public static void IntoBody(IReadOnlyList<MainCase> cases, IDictionary<string, IOpenApiMediaType> content)
    {
        foreach (var group in cases.Where(one => one.Request is not null).GroupBy(one => one.Format.MediaType))
            Into((OpenApiMediaType)content[group.Key], group.ToDictionary(one => one.Name, one => one.Showing(Sent(one))));
    }

    /// <summary>Puts the answers of the cases into the response with one status.</summary>
    public static void IntoAnswer(IReadOnlyList<MainCase> cases, int status, IDictionary<string, IOpenApiMediaType>? content)
    {
        var answered = cases.Where(one => one.Problem is null ? status is 200 or 201 : one.Problem.Status == status)
            .DistinctBy(one => one.Name).ToList();
        if (answered.Count > 0 && content is not null)
            Into((OpenApiMediaType)content[status < 400 ? "application/json" : "application/problem+json"],
                answered.ToDictionary(one => one.Name, one => one.Showing(JsonNode.Parse(one.Answer.Text))));
    }

    /// <summary>Gives a parameter an example for each case with a value of its own; the operation's other cases keep the parameter's.</summary>
    public static void IntoParameter(IReadOnlyList<MainCase> cases, OpenApiParameter parameter)
    {
        if (!cases.Any(one => one.At.ContainsKey(parameter.Name!)))
            return;
        var isSent = parameter.Required ? parameter.Example : null;
        parameter.Examples = cases.DistinctBy(one => one.Name)
            .Select(one => (Case: one, Value: one.At.TryGetValue(parameter.Name!, out var given) ? Typed(given, parameter) : isSent?.DeepClone()))
            .Where(one => one.Value is not null).ToDictionary(one => one.Case.Name, one => one.Case.Showing(one.Value));
        parameter.Example = null;
    }

    private static void Into(OpenApiMediaType media, Dictionary<string, IOpenApiExample> examples)
    {
        media.Example = null;
        media.Examples = media.Examples is null ? examples : media.Examples.Concat(examples).ToDictionary();
    }

    private static JsonNode? Sent(MainCase one) => one.Format == Format.Json ? JsonNode.Parse(one.Request!.Text)
        : one.Parts.Count > 0 ? new JsonObject(one.Parts.Select(part => new KeyValuePair<string, JsonNode?>(part.Key, part.Value.Text)))
        : one.Format == Format.Files ? new JsonObject { ["current"] = one.Request!.Text }
        : JsonValue.Create(one.Request!.Text);

    private static JsonNode? Typed(string given, OpenApiParameter parameter) => parameter.Schema?.Type switch
    {
        JsonSchemaType.Number or JsonSchemaType.Integer => JsonNode.Parse(given),
        JsonSchemaType.Boolean => JsonValue.Create(bool.Parse(given)),
        _ => JsonValue.Create(given),
    };
}
