using System.Text.Json;
using System.Text.Json.Serialization;

namespace PriceFloor.Api.Http;

/// <summary>Writes a long list on all processors, in order; a short one as usual.</summary>
public sealed class LongList<T> : JsonConverter<IReadOnlyList<T>>
{
    private const int InOnePiece = 1000;

    public override IReadOnlyList<T> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Answers are written, never read.");

    public override void Write(Utf8JsonWriter writer, IReadOnlyList<T> value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        if (value.Count <= InOnePiece)
            foreach (var item in value)
                JsonSerializer.Serialize(writer, item, options);
        else
            foreach (var piece in value.Chunk(InOnePiece).AsParallel().AsOrdered().Select(some => JsonSerializer.SerializeToUtf8Bytes(some, options)))
                writer.WriteRawValue(piece.AsSpan(1, piece.Length - 2), skipInputValidation: true); // what is between its brackets
        writer.WriteEndArray();
    }
}
