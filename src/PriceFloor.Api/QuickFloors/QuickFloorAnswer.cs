using System.Text.Json;
using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.QuickFloors;

/// <summary>A first floor, and what it rests on.</summary>
public sealed record QuickFloorAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>What each sold piece must bring in, rounded up: the lowest wholesale price.</summary>
    public required decimal Floor { get; init; }

    /// <summary>Twice the floor, as is common practice.</summary>
    public required decimal Retail { get; init; }

    /// <summary>What reaches the household for each working hour.</summary>
    public required decimal TakeHomePerHour { get; init; }

    /// <summary>What sales must bring in over the year.</summary>
    public required decimal RequiredRevenue { get; init; }

    /// <summary>Takings of a working day, from requiredRevenue.</summary>
    public required decimal PerDay { get; init; }

    /// <summary>Whole pieces a year, rounded down: the floor holds only if this many are made and sold.</summary>
    [WholeNumber]
    public required decimal PiecesPerYear { get; init; }

    /// <summary>The full documents, ready to be stored.</summary>
    public required FirstDocuments Documents { get; init; }

    /// <summary>Defaults that the floor rests on and that lower it.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}

/// <summary>The documents made from the numbers: PUT them as they are, or with more detail.</summary>
[JsonConverter(typeof(FirstDocumentsText))]
public sealed record FirstDocuments
{
    /// <summary>For PUT /v1/profiles/main, or another key.</summary>
    public required CostProfile Profile { get; init; }

    /// <summary>For PUT /v1/designs/{sku}; its profile is main.</summary>
    public required Design Design { get; init; }
}

/// <summary>Writes the documents as the store would return them: with all their defaults.</summary>
public sealed class FirstDocumentsText : JsonConverter<FirstDocuments>
{
    public override FirstDocuments Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException();

    public override void Write(Utf8JsonWriter writer, FirstDocuments value, JsonSerializerOptions options)
    {
        var currency = Currency.Of(value.Profile.Currency);
        writer.WriteStartObject();
        writer.WritePropertyName("profile");
        writer.WriteRawValue(WireJson.WriteDocument(value.Profile, currency));
        writer.WritePropertyName("design");
        writer.WriteRawValue(WireJson.WriteDocument(value.Design, currency));
        writer.WriteEndObject();
    }
}
