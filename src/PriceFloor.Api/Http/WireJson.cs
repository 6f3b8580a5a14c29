using System.Buffers;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace PriceFloor.Api.Http;

/// <summary>
/// The form of JSON: camelCase, kebab-case words, exact numbers. Answers keep the decimals that rounding gave them; stored documents have every
/// significant decimal, and money at least its currency's.
/// </summary>
public static class WireJson
{
    private static readonly JsonSerializerOptions[] s_documents = [.. Enumerable.Range(0, 5).Select(ForDocuments)];

    /// <summary>For answers, and for reading what the reader has already checked.</summary>
    public static JsonSerializerOptions Options { get; } = Configure(new JsonSerializerOptions());

    public static JsonSerializerOptions Configure(JsonSerializerOptions options)
    {
        options.PropertyNamingPolicy = JsonNamingPolicy.CamelCase;
        options.PropertyNameCaseInsensitive = false;
        options.DictionaryKeyPolicy = null;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
        options.UnmappedMemberHandling = JsonUnmappedMemberHandling.Skip;
        options.Converters.Add(new KebabWords(JsonNamingPolicy.KebabCaseLower));
        options.Converters.Add(new KeyOrConverter());
        options.Converters.Add(new LenientNumber());
        options.Converters.Add(new LenientDate());
        options.Converters.Add(new LenientTime());
        options.TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { RequireNothing, LeaveOut } };
        return options;
    }

    /// <summary>The canonical text of a document: two documents have the same content exactly if these texts are equal.</summary>
    public static string WriteDocument<T>(T document, Currency currency) => JsonSerializer.Serialize(document, s_documents[currency.Decimals]);

    /// <summary>The same of a document that does not know its currency: money has the decimals that it was given.</summary>
    public static string WriteDocument<T>(T document) => JsonSerializer.Serialize(document, s_documents[0]);

    /// <summary>Writes an answer with its length, so HEAD has it too.</summary>
    public static async Task WriteAsync<T>(HttpResponse response, T value, CancellationToken cancellation)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(value, Options);
        response.ContentLength = body.Length;
        await AnswerBlocks.WriteAsync(response, body, cancellation);
    }

    private static JsonSerializerOptions ForDocuments(int moneyDecimals)
    {
        var options = Configure(new JsonSerializerOptions());
        options.Converters.Insert(0, new PaddedNumber(0));
        options.DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull;
        options.TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { RequireNothing, type => PadMoney(type, moneyDecimals) } };
        return options;
    }

    /// <summary>The reader has already reported missing properties, with pointers; here they must not throw.</summary>
    private static void RequireNothing(JsonTypeInfo type)
    {
        foreach (var property in type.Properties)
            property.IsRequired = false;
    }

    private static void LeaveOut(JsonTypeInfo type)
    {
        foreach (var property in type.Properties)
            if (property.AttributeProvider?.GetCustomAttributes(typeof(PresentWithAttribute), inherit: true) is [PresentWithAttribute with])
            {
                var other = type.Type.GetProperty(with.Other)!;
                property.ShouldSerialize = (answer, _) => other.GetValue(answer) is not null;
            }
    }

    private static void PadMoney(JsonTypeInfo type, int decimals)
    {
        foreach (var property in type.Properties)
        {
            var isMoney = property.AttributeProvider?.GetCustomAttributes(typeof(NumberFieldAttribute), inherit: true)
                .Any(field => field is MoneyAttribute or PriceAttribute) ?? false;
            if (isMoney && property.PropertyType == typeof(decimal))
                property.CustomConverter = new PaddedNumber(decimals);
            else if (isMoney && property.PropertyType == typeof(decimal?))
                property.CustomConverter = new PaddedNumberOrNull(decimals);
        }
    }

    /// <summary>Reads a number or a numeric string; anything else has already been reported and becomes 0. Writes the number as it is.</summary>
    private sealed class LenientNumber : JsonConverter<decimal>
    {
        public override decimal Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            const NumberStyles Digits = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
            return (reader.ValueIsEscaped ? decimal.TryParse(reader.GetString(), Digits, CultureInfo.InvariantCulture, out var value)
                : decimal.TryParse(reader.HasValueSequence ? reader.ValueSequence.ToArray() : reader.ValueSpan, Digits, CultureInfo.InvariantCulture,
                    out value)) ? value : 0;
        }

        public override void Write(Utf8JsonWriter writer, decimal value, JsonSerializerOptions options) => writer.WriteNumberValue(value);
    }

    private sealed class PaddedNumber(int decimals) : JsonConverter<decimal>
    {
        public override decimal Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException();

        public override void Write(Utf8JsonWriter writer, decimal value, JsonSerializerOptions options) =>
            writer.WriteNumberValue(Rounding.WithDecimals(value, decimals));
    }

    private sealed class PaddedNumberOrNull(int decimals) : JsonConverter<decimal?>
    {
        public override decimal? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException();

        public override void Write(Utf8JsonWriter writer, decimal? value, JsonSerializerOptions options) =>
            writer.WriteNumberValue(Rounding.WithDecimals(value!.Value, decimals));
    }

    private sealed class LenientDate : JsonConverter<DateOnly>
    {
        public override DateOnly Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            TimeText.ReadDate(reader.GetString()!) ?? default;

        public override void Write(Utf8JsonWriter writer, DateOnly value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
    }

    private sealed class LenientTime : JsonConverter<DateTimeOffset>
    {
        public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            TimeText.ReadTime(reader.GetString()!) ?? default;

        public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
            writer.WriteStringValue(TimeText.Write(value));
    }
}

/// <summary>Written, null or not, exactly if another member of the answer is not null.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class PresentWithAttribute(string other) : Attribute
{
    public string Other { get; } = other;
}
