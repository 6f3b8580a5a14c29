using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PriceFloor.Api.Http.Reading;

/// <summary>
/// Any JSON value, null too, for a place that only another document can check. Two values are written alike exactly if they are the same.
/// </summary>
[JsonConverter(typeof(Converter))]
public sealed record AnyJson(JsonElement Value)
{
    /// <summary>Its text as it was sent.</summary>
    public byte[] Utf8 => Encoding.UTF8.GetBytes(Value.GetRawText());

    /// <summary>Writes it with its numbers by value: 1.10 is 1.1.</summary>
    private static void Write(Utf8JsonWriter writer, JsonElement value)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                writer.WriteStartObject();
                foreach (var member in value.EnumerateObject())
                {
                    writer.WritePropertyName(member.Name);
                    Write(writer, member.Value);
                }

                writer.WriteEndObject();
                break;
            case JsonValueKind.Array:
                writer.WriteStartArray();
                foreach (var item in value.EnumerateArray())
                    Write(writer, item);
                writer.WriteEndArray();
                break;
            case JsonValueKind.Number when NumberText.Read(value.GetRawText(), "", field: null) is (var number, null, _):
                writer.WriteNumberValue(Rounding.Trim(number));
                break;
            default:
                value.WriteTo(writer);
                break;
        }
    }

    private sealed class Converter : JsonConverter<AnyJson>
    {
        public override bool HandleNull => true;

        public override AnyJson Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            new(JsonElement.ParseValue(ref reader));

        public override void Write(Utf8JsonWriter writer, AnyJson value, JsonSerializerOptions options) => AnyJson.Write(writer, value.Value);
    }
}
