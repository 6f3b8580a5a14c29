using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PriceFloor.Api.Http;

/// <summary>
/// Enums as kebab-case words. The reader has already reported an unknown word, which becomes the first value. The tables are arrays, because code for
/// a dictionary of every single enum would be generated again at each start.
/// </summary>
public sealed class KebabWords(JsonNamingPolicy naming) : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) => typeToConvert.IsEnum;

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(Words<>).MakeGenericType(typeToConvert), [InOrder(typeToConvert)])!;

    /// <summary>The word for a value in JSON.</summary>
    public static string Of<T>(T value) where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    /// <summary>A name of a program as people write it: "benchShare" is "bench share".</summary>
    public static string Spoken(string name) => JsonNamingPolicy.KebabCaseLower.ConvertName(name).Replace('-', ' ');

    /// <summary>The words of an enum whose values are 0, 1, 2 and so on.</summary>
    private JsonEncodedText[] InOrder(Type type) => Enum.GetValuesAsUnderlyingType(type) is int[] values
        && values.SequenceEqual(Enumerable.Range(0, values.Length))
        ? [.. Enum.GetNames(type).Select(name => JsonEncodedText.Encode(naming.ConvertName(name)))]
        : throw new NotSupportedException($"The values of {type.Name} are not 0, 1, 2 and so on.");

    private sealed class Words<T>(JsonEncodedText[] words) : JsonConverter<T> where T : struct, Enum
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            for (var i = 0; i < words.Length; i++)
                if (reader.ValueTextEquals(words[i].EncodedUtf8Bytes))
                    return Unsafe.BitCast<int, T>(i);
            return default;
        }

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            writer.WriteStringValue(words[Unsafe.BitCast<T, int>(value)]);
    }
}
