using System.ComponentModel.DataAnnotations;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Statements;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PriceFloor.Api.OpenApi;

/// <summary>Puts the reader's checks into each schema: bounds, lengths, which members are required, which may be null.</summary>
public sealed class SchemaText : ISchemaFilter
{
    private static readonly JsonSerializerOptions s_withoutNulls =
        new(WireJson.Options) { DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull };

    public void Apply(IOpenApiSchema schema, SchemaFilterContext context)
    {
        if (schema is not OpenApiSchema concrete)
            return;
        if (context.MemberInfo is PropertyInfo member)
            OfMember(concrete, member);
        else if (context.Type.IsGenericType && context.Type.GetGenericTypeDefinition() == typeof(KeyOr<>))
            EitherKeyOrDocument(concrete, context.Type.GetGenericArguments()[0], context);
        else if (context.Type == typeof(AnyJson))
            Any(concrete);
        else if (context.Type.IsGenericType && context.Type.GetGenericTypeDefinition() == typeof(NumberOr<>))
            EitherNumberOr(concrete, context.Type.GetGenericArguments()[0], context);
        else if (context.Type.IsGenericType && context.Type.GetGenericTypeDefinition() == typeof(WordOrList<,>))
            EitherWordOrList(concrete, context.Type.GetGenericArguments(), context);
        else if (context.Type.GetCustomAttribute<EitherOfAttribute>() is { } either)
            AnyOf(concrete, context, [.. either.Types]);
        else if (concrete.Properties is { Count: > 0 })
            OfObject(concrete, context);
    }

    /// <summary>The requests of callers.</summary>
    private static bool IsInput(Type type) => type.Assembly == typeof(Design).Assembly || type.Assembly == typeof(ReadingRules).Assembly
        || type.Name.EndsWith("Request", StringComparison.Ordinal) || type.Namespace == typeof(DocumentChange).Namespace;

    private static void OfMember(OpenApiSchema schema, PropertyInfo member)
    {
        var list = schema.AdditionalProperties as OpenApiSchema ?? schema; // an object with names of the caller's
        var numbers = list.Items as OpenApiSchema ?? list;
        if (member.GetCustomAttribute<NumberFieldAttribute>() is { } field && numbers.Format == "decimal")
        {
            if (field.Above)
                numbers.ExclusiveMinimum = field.Minimum;
            else
                numbers.Minimum = field.Minimum;
            numbers.Maximum = field.Maximum;
        }

        if (member.IsDefined(typeof(PiecesAttribute)) || member.IsDefined(typeof(WholeNumberAttribute)))
            (numbers.Type, numbers.Format) = ((numbers.Type & ~JsonSchemaType.Number) | JsonSchemaType.Integer, "int64");
        if (IsInput(member.DeclaringType!) && (numbers.Type & (JsonSchemaType.Number | JsonSchemaType.Integer)) != default(JsonSchemaType))
            numbers.Type |= JsonSchemaType.String; // a number may come as text
        if (schema.Type == JsonSchemaType.String && member.PropertyType == typeof(string)
                && member.IsDefined(typeof(System.Runtime.CompilerServices.RequiredMemberAttribute)))
            schema.MinLength = 1;
        if (member.GetCustomAttribute<EachTextAttribute>() is { } each && schema.Items is OpenApiSchema text)
            (text.MinLength, text.MaxLength) = (each.Minimum, each.Maximum);
        if (member.GetCustomAttribute<MaxLengthAttribute>() is { Length: var most } && schema.Type?.HasFlag(JsonSchemaType.Array) == true)
            (schema.MaxItems, schema.MaxLength) = (most, null);
        if (member.GetCustomAttribute<MaxLengthAttribute>() is { Length: var names } && schema.AdditionalProperties is not null)
            (schema.MaxProperties, schema.MaxLength) = (names, null);
        if (member.GetCustomAttribute<MinLengthAttribute>() is { Length: var least } && schema.Type?.HasFlag(JsonSchemaType.Array) == true)
            (schema.MinItems, schema.MinLength) = (least, null);
    }

    private static void OfObject(OpenApiSchema schema, SchemaFilterContext context)
    {
        var isAnswer = context.Type.Name.EndsWith("Answer", StringComparison.Ordinal) || context.Type == typeof(ProblemBody);
        schema.AdditionalPropertiesAllowed = isAnswer;
        var nullability = new NullabilityInfoContext(); // not shared: two documents may be written at once
        foreach (var (name, value) in schema.Properties!.ToList())
        {
            var member = context.Type.GetProperties().First(property => string.Equals(property.Name, name, StringComparison.OrdinalIgnoreCase));
            var mayBeNull = nullability.Create(member).ReadState == NullabilityState.Nullable;
            if (mayBeNull && value is OpenApiSchemaReference reference
                    && !(member.PropertyType.IsGenericType && member.PropertyType.GetGenericTypeDefinition() == typeof(KeyOr<>)))
                schema.Properties![name] = new OpenApiSchema
                {
                    Description = reference.Description,
                    OneOf = [new OpenApiSchema { Type = JsonSchemaType.Null }, reference],
                };
            var isRequired = member.IsDefined(typeof(System.Runtime.CompilerServices.RequiredMemberAttribute))
                || (!mayBeNull && IsPositional(context.Type, name));
            if (isRequired)
                (schema.Required ??= new HashSet<string>()).Add(name);
            else
                schema.Required?.Remove(name);
        }

        if (IsInput(context.Type) && context.Type.GetConstructor(Type.EmptyTypes) is not null)
            TellDefaults(schema, context.Type);
        foreach (var name in ReadOnlyFields.Of(context.Type).Order(StringComparer.Ordinal))
            schema.Properties![name] = ReadOnly(name);
    }

    /// <summary>The value of a property that is left out, read from the record itself.</summary>
    private static void TellDefaults(OpenApiSchema schema, Type type)
    {
        var empty = Activator.CreateInstance(type);
        foreach (var (name, value) in schema.Properties!.Where(property => schema.Required?.Contains(property.Key) != true))
        {
            var given = type.GetProperties()
                .First(property => string.Equals(property.Name, name, StringComparison.OrdinalIgnoreCase)).GetValue(empty);
            if (given is null)
                continue;
            var node = JsonSerializer.SerializeToNode(given, given.GetType(), s_withoutNulls);
            if (value is OpenApiSchema { AdditionalProperties: not null } names && node is JsonObject { Count: 0 } none)
                (names.Extensions ??= new Dictionary<string, IOpenApiExtension>())["default"] = new JsonNodeExtension(none); // a Default is dropped
            else if (value is OpenApiSchema concrete)
                concrete.Default = node;
            else if (value is OpenApiSchemaReference reference)
                reference.Default = node;
        }
    }

    private static bool IsPositional(Type type, string name) =>
        type.GetConstructors().Any(constructor =>
            constructor.GetParameters().Any(parameter => string.Equals(parameter.Name, name, StringComparison.OrdinalIgnoreCase)));

    private static OpenApiSchema ReadOnly(string name) => name switch
    {
        "revision" => new OpenApiSchema
        {
            Type = JsonSchemaType.Integer,
            Format = "int64",
            ReadOnly = true,
            Description = "Number of the revision, also its ETag; ignored on input.",
            Examples = [JsonValue.Create(1)],
        },
        "savedAt" => new OpenApiSchema
        {
            Type = JsonSchemaType.String,
            Format = "date-time",
            ReadOnly = true,
            Description = "When the revision was saved; ignored on input.",
            Examples = [JsonValue.Create("2027-01-02T09:00:00.000000Z")],
        },
        "state" => new OpenApiSchema
        {
            Type = JsonSchemaType.String,
            ReadOnly = true,
            Description = "draft, issued, accepted, declined, withdrawn, lapsed, superseded or done, on the day of the answer; ignored on input.",
            Examples = [JsonValue.Create("issued")],
        },
        "issuedAt" => new OpenApiSchema
        {
            Type = JsonSchemaType.String,
            Format = "date-time",
            ReadOnly = true,
            Description = "When it was issued; ignored on input.",
            Examples = [JsonValue.Create("2027-01-02T09:00:00.000000Z")],
        },
        "supersededBy" => new OpenApiSchema
        {
            Type = JsonSchemaType.String,
            ReadOnly = true,
            Description = "Key of the quote that was made from it; ignored on input.",
            Examples = [JsonValue.Create("Q-2027-014-2")],
        },
        _ => new OpenApiSchema
        {
            Type = JsonSchemaType.String,
            ReadOnly = true,
            Description = "The document's name in its path; ignored on input.",
            Examples = [JsonValue.Create(name switch { "channel" => "web", "sku" => "RB-014", _ => "main" })],
        },
    };

    private static void AnyOf(OpenApiSchema schema, SchemaFilterContext context, params IEnumerable<Type> types)
    {
        (schema.Type, schema.Properties, schema.Required, schema.AdditionalPropertiesAllowed) = (null, null, null, true);
        schema.AnyOf = [.. types.Select(type => Of(type.IsArray ? type.GetElementType()! : type) is var one && type.IsArray
            ? new OpenApiSchema { Type = JsonSchemaType.Array, MinItems = 1, MaxItems = 1000, Items = one }
            : one)];

        IOpenApiSchema Of(Type type) => context.SchemaGenerator.GenerateSchema(type, context.SchemaRepository);
    }

    private static void Any(OpenApiSchema schema)
    {
        (schema.Type, schema.Properties, schema.Required, schema.AdditionalPropertiesAllowed) = (null, null, null, true);
        schema.Description = "Any JSON value that the place takes.";
    }

    private static void EitherNumberOr(OpenApiSchema schema, Type other, SchemaFilterContext context)
    {
        (schema.Type, schema.Properties, schema.Required, schema.AdditionalPropertiesAllowed) = (null, null, null, true);
        schema.Description = "A number, or an object in its place.";
        schema.OneOf =
        [
            new OpenApiSchema { Type = JsonSchemaType.Number | JsonSchemaType.String, Format = "decimal", Examples = [JsonValue.Create(1.1m)] },
            context.SchemaGenerator.GenerateSchema(other, context.SchemaRepository),
        ];
    }

    private static void EitherWordOrList(OpenApiSchema schema, Type[] wordAndItem, SchemaFilterContext context)
    {
        (schema.Type, schema.Properties, schema.Required, schema.AdditionalPropertiesAllowed) = (null, null, null, true);
        schema.Description = "A list, or a word that says where it comes from.";
        schema.OneOf =
        [
            context.SchemaGenerator.GenerateSchema(wordAndItem[0], context.SchemaRepository),
            new OpenApiSchema
            {
                Type = JsonSchemaType.Array,
                MinItems = WordOrList<DayOfWeek, object>.Least,
                MaxItems = WordOrList<DayOfWeek, object>.Most,
                Items = context.SchemaGenerator.GenerateSchema(wordAndItem[1], context.SchemaRepository),
            },
        ];
    }

    private static void EitherKeyOrDocument(OpenApiSchema schema, Type document, SchemaFilterContext context)
    {
        context.SchemaGenerator.GenerateSchema(document, context.SchemaRepository);
        (schema.Type, schema.Properties, schema.Required, schema.AdditionalPropertiesAllowed) = (null, null, null, true);
        schema.Description = "The key of a stored document, or the document itself.";
        schema.OneOf =
        [
            new OpenApiSchema
            {
                Type = JsonSchemaType.String,
                MinLength = 1,
                MaxLength = Limits.KeyLength,
                Examples = [JsonValue.Create(
                    document == typeof(Design) ? "RB-014" : document == typeof(Channel) ? "web" : document == typeof(Plan) ? "2027" : "main")],
            },
            new OpenApiSchemaReference(document == typeof(Design) ? DocumentTextFilter.InlineDesign
                : document == typeof(Plan) ? DocumentTextFilter.InlinePlan : document.Name),
        ];
    }
}
