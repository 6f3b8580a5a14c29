using System.Text.Json;
using System.Text.Json.Serialization;

namespace PriceFloor.Api.Http;

/// <summary>The key of a stored document as a string, or the document itself as an object.</summary>
public sealed class KeyOrConverter : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) => typeToConvert.IsGenericType && typeToConvert.GetGenericTypeDefinition() == typeof(KeyOr<>);

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(Converter<>).MakeGenericType(typeToConvert.GetGenericArguments()))!;

    private sealed class Converter<T> : JsonConverter<KeyOr<T>> where T : class
    {
        public override KeyOr<T> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String
                ? new KeyOr<T>(reader.GetString(), null)
                : new KeyOr<T>(null, JsonSerializer.Deserialize<T>(ref reader, options));

        public override void Write(Utf8JsonWriter writer, KeyOr<T> value, JsonSerializerOptions options)
        {
            if (value.Key is { } key)
                writer.WriteStringValue(key);
            else
                JsonSerializer.Serialize(writer, value.Document, options);
        }
    }
}
