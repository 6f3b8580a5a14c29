using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using PriceFloor.Api.Access;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Evidence.Sheets;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PriceFloor.Api.OpenApi;

/// <summary>Writes each operation's parameters, body, answers, headers, problems and examples from the metadata of its endpoint.</summary>
public sealed class OperationText : IOperationFilter
{
    private static readonly Dictionary<string, string> s_pathParameters = new()
    {
        ["sku"] = "Key of the design.",
        ["channel"] = "Key of the channel.",
        ["number"] = "Number of the revision.",
        ["name"] = "Name of the key.",
        ["source"] = "Who sent the line.",
        ["ref"] = "The source's own id of the line; a slash in it is written %2F.",
        ["sheet"] = "Name of the sheet, from GET /v1/sheets.",
    };

    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        var metadata = context.ApiDescription.ActionDescriptor.EndpointMetadata;
        if (metadata.OfType<Operation>().FirstOrDefault() is not { } told)
            return;

        var retirement = metadata.OfType<Retirement>().FirstOrDefault();
        var body = metadata.OfType<BodyMetadata>().FirstOrDefault()?.Type;
        operation.Parameters =
        [
            .. PathParameters(context.ApiDescription.RelativePath!, told.KeyExample),
            .. metadata.OfType<QueryMetadata>().SelectMany(query => query.Parameters).Select(parameter => Query(parameter, told)),
            .. Preconditions(told, context),
        ];
        operation.RequestBody = told.Bodies.Count > 0 ? new OpenApiRequestBody
        {
            Required = true,
            Description = told.BodyWords,
            Content = told.Bodies.ToDictionary(one => one.Format.MediaType, one => (IOpenApiMediaType)In(one, context)),
        }
        : body is null ? null : new OpenApiRequestBody
        {
            Required = true,
            Description = "One JSON object.",
            Content = new Dictionary<string, IOpenApiMediaType> { ["application/json"] = Media(Schema(body, context), told.RequestExample) },
        };
        if (operation.RequestBody?.Content is { } sent)
            MainCase.IntoBody(told.Cases, sent);
        foreach (var parameter in operation.Parameters)
            MainCase.IntoParameter(told.Cases, (OpenApiParameter)parameter);
        operation.Responses = new OpenApiResponses();
        foreach (var (status, words) in told.Good)
            operation.Responses[Text(status)] = Good(told, status, words, context);
        if (context.ApiDescription.HttpMethod == "GET" && IsTagged(told) && !told.Good.ContainsKey(304))
            operation.Responses[Text(304)] = Good(told, 304, "The caller already has the picture or page.", context);
        foreach (var group in ProblemAnswers.Of(told, metadata, body is not null || told.Bodies.Count > 0, operation.Parameters.Count > 0, context)
                .GroupBy(type => type.Status).OrderBy(group => group.Key))
            operation.Responses[Text(group.Key)] = ProblemAnswers.Response([.. group], context);
        foreach (var (text, response) in operation.Responses)
        {
            var status = int.Parse(text, CultureInfo.InvariantCulture);
            ((OpenApiResponse)response).Headers = HeaderText.Of(status, told, IsPicture(context), retirement, context.Document);
            MainCase.IntoAnswer(told.Cases, status, response.Content);
        }

        if (retirement is not null)
            (operation.Deprecated, operation.Description) = (true, $"{told.Description} {Text(retirement)}");
        if (metadata.OfType<NeedsScope>().Any())
            operation.Security = [new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference("key", context.Document)] = [] }];
        else
            operation.Security = [];
    }

    private static IEnumerable<IOpenApiParameter> PathParameters(string path, string? key) =>
        path.Split('/').Where(part => part.StartsWith('{')).Select(part => part.Trim('{', '}')).Select(name => new OpenApiParameter
        {
            Name = name,
            In = ParameterLocation.Path,
            Required = true,
            Description = name == "key" ? KeyIn(path).Description : s_pathParameters[name],
            Schema = name == "ref" ? new OpenApiSchema { Type = JsonSchemaType.String, MinLength = 1, MaxLength = LogRanges.MostText }
                : name == "number"
                ? new OpenApiSchema { Type = JsonSchemaType.Integer, Format = "int64", Minimum = "1" }
                : new OpenApiSchema { Type = JsonSchemaType.String, MinLength = 1, MaxLength = Limits.KeyLength, Pattern = Limits.KeyPattern },
            Example =
                JsonValue.Create(name switch
                {
                    "key" => key ?? KeyIn(path).Example,
                    "sku" => "RB-014",
                    "channel" => "web",
                    "number" => "1",
                    "sheet" => "fees",
                    "source" => IsBench(path) ? "bench-book" : "web-shop",
                    "ref" => IsBench(path) ? "2027-03-02-1" : "10231-1",
                    _ => "shop-plugin",
                }) is { } example && name != "number" ? example : JsonValue.Create(1),
        });

    private static bool IsBench(string path) => path.Contains("/bench-log/", StringComparison.Ordinal);

    /// <summary>The segment before <c>key</c> says what it is the key of.</summary>
    private static (string Description, string Example) KeyIn(string path) => path.Split('/').SkipWhile(part => part != "v1")
        .ElementAtOrDefault(1) switch
    {
        "profiles" => ("Key of the cost profile.", "main"),
        "channels" => ("Key of the channel.", "web"),
        "quotes" => ("Key of the quote.", "Q-2027-014"),
        _ => ("Key of the set of reading rules.", "main"),
    };

    private static OpenApiParameter Query(QueryParameter parameter, Operation told) => new()
    {
        Name = parameter.Name,
        In = ParameterLocation.Query,
        Required = parameter.Required || told.Needed.Contains(parameter.Name),
        Description = parameter.Description,
        Schema = new OpenApiSchema
        {
            Type = parameter.Type switch
            {
                "number" => JsonSchemaType.Number,
                "integer" => JsonSchemaType.Integer,
                "boolean" => JsonSchemaType.Boolean,
                _ => JsonSchemaType.String,
            },
            Format = parameter.Format,
            Minimum = parameter.Type == "integer" ? parameter.Minimum?.ToString(CultureInfo.InvariantCulture) : null,
            ExclusiveMinimum = parameter.Type == "number" ? parameter.Minimum?.ToString(CultureInfo.InvariantCulture) : null,
            Maximum = parameter.Maximum?.ToString(CultureInfo.InvariantCulture),
            Default = parameter.Default is null ? null : JsonNode.Parse(parameter.Default),
        },
        Example = parameter.Example is null ? null
            : parameter.Type is "number" or "integer" ? JsonNode.Parse(parameter.Example)
            : JsonValue.Create(parameter.Example),
    };

    private static IEnumerable<IOpenApiParameter> Preconditions(Operation told, OperationFilterContext context)
    {
        var method = context.ApiDescription.HttpMethod!;
        if (method is "PUT" or "PATCH" or "DELETE" or "POST" && told.Problems.Contains(ProblemTypes.StaleRevision))
            yield return Header("If-Match", "Write only if the present revision has this ETag.", "\"7\"");
        if (method == "PUT")
            yield return Header("If-None-Match", "* to create only.", "*");
        if (method == "GET" && IsTagged(told))
            yield return Header("If-Match", "Answer only if the answer has this ETag; otherwise 412.",
                told.HasRevision ? "\"7\"" : "\"0c4b8f6a2d1e9370\"");
        if (method == "GET" && told.HasRevision)
            yield return Header("If-None-Match", "304 if the revision has this ETag.", "\"7\"");
        if (method == "GET" && !told.HasRevision && IsTagged(told))
            yield return Header("If-None-Match", "304 if the answer still has this ETag.", "\"0c4b8f6a2d1e9370\"");
    }

    /// <summary>What is read at an address that ends in .svg or .html is only pictures and pages, all of which have an ETag.</summary>
    private static bool IsPicture(OperationFilterContext context) => context.ApiDescription.HttpMethod == "GET"
        && Path.GetExtension(context.ApiDescription.RelativePath!) is ".svg" or ".html";

    /// <summary>Whether an answer, in one of its formats, has an ETag.</summary>
    internal static bool IsTagged(Operation told) =>
        told.HasRevision || told.HasTag || told.OtherAnswers.Any(other => other.Format == Format.Svg || other.Format == Format.Html);

    private static OpenApiParameter Header(string name, string description, string example) => new()
    {
        Name = name,
        In = ParameterLocation.Header,
        Description = description,
        Schema = new OpenApiSchema { Type = JsonSchemaType.String },
        Example = JsonValue.Create(example),
    };

    private static OpenApiResponse Good(Operation told, int status, string words, OperationFilterContext context)
    {
        var response = new OpenApiResponse { Description = words };
        if (told.Answer is not null && status is 200 or 201)
            response.Content = new Dictionary<string, IOpenApiMediaType>
            {
                ["application/json"] = Media(told.IsPage ? Page(told, AnswerOf(told, context)) : AnswerOf(told, context), told.AnswerExample),
            };
        if (status == 200)
            foreach (var other in told.OtherAnswers)
                (response.Content ??= new Dictionary<string, IOpenApiMediaType>())[other.Format.MediaType] = In(other, context);
        return response;
    }

    private static OpenApiMediaType In(FormatExample one, OperationFilterContext context) => one.Format == Format.Json
        ? Media(one.Schema!.IsArray
            ? new OpenApiSchema { Type = JsonSchemaType.Array, MaxItems = 1000, Items = ElementOf(one.Schema.GetElementType()!, context) }
            : Schema(one.Schema, context), one.Example)
        : one.Format == Format.MergePatch
        ? Media(new OpenApiSchema { Type = JsonSchemaType.Object, AdditionalProperties = new OpenApiSchema() }, one.Example)
        : one.Format == Format.Files
        ? new OpenApiMediaType
        {
            Schema = new OpenApiSchema
            {
                Type = JsonSchemaType.Object,
                MinProperties = 1,
                MaxProperties = 24,
                AdditionalProperties = new OpenApiSchema { Type = JsonSchemaType.String, Format = "binary" },
            },
            Example = one.Example is null ? null : new JsonObject { ["current"] = one.Example.Text },
        }
        : one.Format == Format.Xlsx
        ? new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String, Format = "binary" } }
        : new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String }, Example = JsonValue.Create(one.Example?.Text) };

    /// <summary>A design of a batch has its key.</summary>
    private static IOpenApiSchema ElementOf(Type type, OperationFilterContext context) =>
        type == typeof(Design) ? new OpenApiSchemaReference(DocumentTextFilter.NamedDesign) : Schema(type, context);

    private static IOpenApiSchema Page(Operation told, IOpenApiSchema item) => new OpenApiSchema
    {
        Type = JsonSchemaType.Object,
        Required = new HashSet<string> { "items", "next" },
        Properties = new Dictionary<string, IOpenApiSchema>
        {
            ["items"] = new OpenApiSchema { Type = JsonSchemaType.Array, Items = item, Description = "One page, in order." },
            ["next"] = new OpenApiSchema
            {
                Type = JsonSchemaType.String | JsonSchemaType.Null,
                Description = "Send this as after for the next page; null on the last.",
                Examples = [JsonValue.Create(
                    told.TellsDeletions ? "100" : told.Answer == typeof(Design) ? "RB-014" : told.Answer == typeof(ListedPrice) ? "web" : "main")],
            },
        },
    };

    private static IOpenApiSchema AnswerOf(Operation told, OperationFilterContext context) => told.TellsDeletions
        ? new OpenApiSchema { AnyOf = [Schema(told.Answer!, context), new OpenApiSchemaReference(DocumentTextFilter.Deletion)] }
        : told.AnswerOtherwise is { } unread
            ? new OpenApiSchema { AnyOf = [Schema(told.Answer!, context), Schema(unread, context)] }
            : Schema(told.Answer!, context);

    private static IOpenApiSchema Schema(Type type, OperationFilterContext context) =>
        context.SchemaGenerator.GenerateSchema(type, context.SchemaRepository);

    private static OpenApiMediaType Media(IOpenApiSchema schema, Example? example) =>
        new() { Schema = schema, Example = example is null ? null : JsonNode.Parse(example.Text) };

    private static string Text(int status) => status.ToString(CultureInfo.InvariantCulture);

    private static string Text(Retirement retirement) => retirement.Sunset is { } sunset
        ? string.Create(CultureInfo.InvariantCulture,
            $"Deprecated since {retirement.Since:yyyy-MM-dd}; answers until {sunset:yyyy-MM-dd}. See {retirement.Link}.")
        : string.Create(CultureInfo.InvariantCulture, $"Deprecated since {retirement.Since:yyyy-MM-dd}. See {retirement.Link}.");
}
