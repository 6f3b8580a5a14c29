using System.Text.Json;
using System.Text.Json.Serialization;

namespace PriceFloor.Api.Http;

/// <summary>Writes a long list on all processors, in order; a short one as usual. <see cref="LongAnswer{T}"/> sends it piece by piece.</summary>
public sealed class LongList<T> : JsonConverter<IReadOnlyList<T>>, ILongList
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
            foreach (var lines in Lines(value, options))
                writer.WriteRawValue(lines.Span, skipInputValidation: true);
        writer.WriteEndArray();
    }

    IEnumerable<ReadOnlyMemory<byte>> ILongList.PiecesOf(object list, JsonSerializerOptions options)
    {
        var before = "["u8.ToArray();
        foreach (var lines in Lines((IReadOnlyList<T>)list, options))
        {
            yield return before;
            yield return lines;
            before = ","u8.ToArray();
        }

        yield return before is [(byte)'['] ? "[]"u8.ToArray() : "]"u8.ToArray();
    }

    /// <summary>The lines with commas between them, in pieces without commas between those.</summary>
    private static IEnumerable<ReadOnlyMemory<byte>> Lines(IReadOnlyList<T> list, JsonSerializerOptions options)
    {
        var pieces = Enumerable.Range(0, (list.Count + InOnePiece - 1) / InOnePiece);
        return list.Count <= InOnePiece ? pieces.Select(Piece) : pieces.AsParallel().AsOrdered().Select(Piece);

        ReadOnlyMemory<byte> Piece(int piece)
        {
            var some = new T[int.Min(InOnePiece, list.Count - (piece * InOnePiece))];
            for (var i = 0; i < some.Length; i++)
                some[i] = list[(piece * InOnePiece) + i];
            return Bare(some, options);
        }
    }

    /// <summary>What is between the brackets.</summary>
    private static ReadOnlyMemory<byte> Bare(T[] some, JsonSerializerOptions options)
    {
        var text = JsonSerializer.SerializeToUtf8Bytes(some, options);
        return text.AsMemory(1, text.Length - 2);
    }
}
