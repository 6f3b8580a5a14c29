using System.Text.Json;
using System.Text.Json.Serialization;

namespace PriceFloor.Api.Http.Reading;

/// <summary>A list of 1 to 200 items, or in its place a word that says where it comes from.</summary>
[JsonConverter(typeof(WordOrListConverter))]
public sealed record WordOrList<TWord, TItem>(TWord? Word, IReadOnlyList<TItem>? List) where TWord : struct, Enum
{
    /// <summary>How few and how many items there may be.</summary>
    public const int Least = 1, Most = 200;
}

public sealed class WordOrListConverter : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) =>
        typeToConvert.IsGenericType && typeToConvert.GetGenericTypeDefinition() == typeof(WordOrList<,>);

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(Converter<,>).MakeGenericType(typeToConvert.GetGenericArguments()))!;

    private sealed class Converter<TWord, TItem> : JsonConverter<WordOrList<TWord, TItem>> where TWord : struct, Enum
    {
        public override WordOrList<TWord, TItem> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.StartArray
                ? new(null, JsonSerializer.Deserialize<IReadOnlyList<TItem>>(ref reader, options))
                : new(JsonSerializer.Deserialize<TWord>(ref reader, options), null);

        public override void Write(Utf8JsonWriter writer, WordOrList<TWord, TItem> value, JsonSerializerOptions options)
        {
            if (value.Word is { } word)
                JsonSerializer.Serialize(writer, word, options);
            else
                JsonSerializer.Serialize(writer, value.List, options);
        }
    }
}
