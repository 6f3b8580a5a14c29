using System.Text.Json;
using System.Text.Json.Serialization;

namespace PriceFloor.Api.Http;

/// <summary>Enums as kebab-case words; a word that is none has been told by the reader and becomes the first.</summary>
public sealed class KebabWords(JsonNamingPolicy naming) : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) => typeToConvert.IsEnum;

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(Words<>).MakeGenericType(typeToConvert), naming)!;

    /// <summary>The word that stands for a value on the wire.</summary>
    public static string Of<T>(T value) where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    private sealed class Words<T>(JsonNamingPolicy naming) : JsonConverter<T> where T : struct, Enum
    {
        private readonly Dictionary<string, T> _values = Enum.GetValues<T>().ToDictionary(value => naming.ConvertName(value.ToString()));
        private readonly Dictionary<T, JsonEncodedText> _words = Enum.GetValues<T>().ToDictionary(value => value, value => JsonEncodedText.Encode(naming.ConvertName(value.ToString())));

        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => _values.GetValueOrDefault(reader.GetString()!);

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(_words[value]);
    }
}
