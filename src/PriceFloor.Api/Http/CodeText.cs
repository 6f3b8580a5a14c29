using System.Text.Json;
using System.Text.Json.Serialization;

namespace PriceFloor.Api.Http;

/// <summary>A code is written as its word.</summary>
public sealed class CodeText : JsonConverter<Code>
{
    public override Code Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Codes are answered, never read.");

    public override void Write(Utf8JsonWriter writer, Code value, JsonSerializerOptions options) => writer.WriteStringValue(value.Word);
}
