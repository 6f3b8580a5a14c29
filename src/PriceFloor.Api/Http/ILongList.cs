using System.Text.Json;

namespace PriceFloor.Api.Http;

/// <summary>Writes a list that may be long.</summary>
internal interface ILongList
{
    /// <summary>The list's text, in pieces that follow each other.</summary>
    IEnumerable<ReadOnlyMemory<byte>> PiecesOf(object list, JsonSerializerOptions options);
}
