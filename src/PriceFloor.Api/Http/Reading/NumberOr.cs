using System.Text.Json;
using System.Text.Json.Serialization;

namespace PriceFloor.Api.Http.Reading;

/// <summary>A plain number, or an object in its place.</summary>
[JsonConverter(typeof(NumberOrConverter))]
public sealed record NumberOr<T>(decimal? Number, T? Other) where T : class;

public sealed class NumberOrConverter : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) =>
        typeToConvert.IsGenericType && typeToConvert.GetGenericTypeDefinition() == typeof(NumberOr<>);

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(Converter<>).MakeGenericType(typeToConvert.GetGenericArguments()))!;

    private sealed class Converter<T> : JsonConverter<NumberOr<T>> where T : class
    {
        public override NumberOr<T> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.StartObject
                ? new NumberOr<T>(null, JsonSerializer.Deserialize<T>(ref reader, options))
                : new NumberOr<T>(JsonSerializer.Deserialize<decimal>(ref reader, options), null);

        public override void Write(Utf8JsonWriter writer, NumberOr<T> value, JsonSerializerOptions options)
        {
            if (value.Number is { } number)
                writer.WriteNumberValue(Rounding.Trim(number));
            else
                JsonSerializer.Serialize(writer, value.Other, options);
        }
    }
}
