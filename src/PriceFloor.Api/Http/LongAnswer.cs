using System.Buffers;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace PriceFloor.Api.Http;

/// <summary>
/// A successful answer as JSON with lists that may be long (<see cref="LongList{T}"/>). It is sent piece by piece and its text is never held whole,
/// so its length is not known when it begins. All its figures must have been computed: once it has begun, it cannot fail.
/// </summary>
public sealed class LongAnswer<T>(T value) : IResult where T : notnull
{
    private const int Enough = 64 * 1024;

    private static readonly JsonTypeInfo s_type = WireJson.Options.GetTypeInfo(typeof(T));

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        httpContext.Response.ContentType = JsonAnswer.ContentType;
        var held = new ArrayBufferWriter<byte>(Enough);
        foreach (var piece in Pieces())
        {
            held.Write(piece.Span);
            if (held.WrittenCount < Enough)
                continue;
            await AnswerBlocks.WriteAsync(httpContext.Response, held.WrittenMemory, httpContext.RequestAborted);
            held.ResetWrittenCount();
        }

        await AnswerBlocks.WriteAsync(httpContext.Response, held.WrittenMemory, httpContext.RequestAborted);
    }

    /// <summary>Its text, in pieces that follow each other.</summary>
    public IEnumerable<ReadOnlyMemory<byte>> Pieces()
    {
        var before = "{"u8.ToArray();
        foreach (var property in s_type.Properties)
        {
            var found = property.Get?.Invoke(value);
            if (property.Get is null || property.ShouldSerialize?.Invoke(value, found) == false)
                continue;
            yield return before;
            before = ","u8.ToArray();
            yield return JsonSerializer.SerializeToUtf8Bytes(property.Name, WireJson.Options);
            yield return ":"u8.ToArray();
            if (property.CustomConverter is ILongList list && found is not null)
                foreach (var piece in list.PiecesOf(found, WireJson.Options))
                    yield return piece;
            else
                yield return JsonSerializer.SerializeToUtf8Bytes(found, property.PropertyType, WireJson.Options);
        }

        yield return before is [(byte)'{'] ? "{}"u8.ToArray() : "}"u8.ToArray();
    }
}
