using System.Text.Json;
using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Statements;

/// <summary>Writes the draft as the store would return it: with all its defaults.</summary>
public sealed class DraftText : JsonConverter<CostProfile>
{
    public override CostProfile Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException();

    public override void Write(Utf8JsonWriter writer, CostProfile value, JsonSerializerOptions options) =>
        writer.WriteRawValue(WireJson.WriteDocument(value, Currency.Of(value.Currency)));
}
