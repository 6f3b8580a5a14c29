using System.Text.Json;
using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Documents;

/// <summary>
/// Writes a draft as the store would return it: with all its defaults, and money with at least the decimals of its currency. A design does not know
/// its currency; its money has the decimals that it was given.
/// </summary>
public sealed class DraftText<T> : JsonConverter<T> where T : class
{
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => throw new NotSupportedException();

    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteRawValue(Of(value));

    public static string Of(T value) => value switch
    {
        CostProfile year => WireJson.WriteDocument(value, Currency.Of(year.Currency)),
        Channel channel => WireJson.WriteDocument(value, Currency.Of(channel.Currency)),
        _ => WireJson.WriteDocument(value),
    };
}
