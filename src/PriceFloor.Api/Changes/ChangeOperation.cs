using System.Text.Json;
using System.Text.Json.Nodes;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Changes;

/// <summary>A change whose places in one document are found: it can be applied to this document again and again.</summary>
internal sealed class ChangeOperation
{
    private readonly DocumentChange _change;
    private readonly ChangePlace? _place;
    private readonly object? _value;
    private readonly Type _document;

    private ChangeOperation(DocumentChange change, ChangePlace? place, object? value, Type document) =>
        (_change, _place, _value, _document) = (change, place, value, document);

    /// <summary>The pointers that it changes, in the document.</summary>
    public IReadOnlyList<string> Pointers { get; private init; } = [];

    /// <summary>Whether its values were sent, and so may have no more decimals than the fields carry.</summary>
    public bool IsSent => _change.Merge is not null || _change.To is not null;

    /// <summary>The bounds of the number that it changes.</summary>
    public NumberFieldAttribute? Field => (_place?.Schema as BodySchema.Number)?.Field;

    /// <summary>The number that stands at its place before it; null if there is none, or there are several places.</summary>
    public decimal? Before => _place?.Values is [decimal number] ? number : null;

    /// <summary>The change at its places in a document, or why it cannot be; pointers are in the change.</summary>
    /// <param name="change">The change, which breaks no rule of its own.</param>
    /// <param name="document">The document.</param>
    /// <param name="schema">What of it can change.</param>
    /// <param name="isNew">Whether the document is not stored yet.</param>
    public static Outcome<ChangeOperation> Of(DocumentChange change, object document, ChangeSchema schema, bool isNew)
    {
        if (change.Merge is { } merge)
            return MergeOf(change, merge, document, schema);
        var place = ChangePlace.Find(document, schema.Root, DocumentPointer.Find(change.At!)!, change.Remove == true);
        if (place.Found is not { } found)
            return place.Faults.Select(fault => fault with { Pointer = "/at" }).ToList();
        if (isNew && change.To is null)
            return new Fault("/at", FaultCodes.LeadsNowhere, "No price is listed there, so there is nothing to change; to lists one.");
        if (found.IsEnd && change.To is null)
            return new Fault("/at", FaultCodes.LeadsNowhere, "Nothing stands there yet; it takes to only.");
        return change.To is not null && ChangeRange.Of(change) is null ? ToOf(change, found, document, schema) : ChangeOf(change, found, document);
    }

    /// <summary>The document after it.</summary>
    /// <param name="document">The document before it.</param>
    /// <param name="number">The factor, amount or value; null for a change without a number.</param>
    /// <param name="held">Set if a number was held at its field's bounds; null if numbers are not held.</param>
    public object Apply(object document, decimal? number, Held? held = null) => _change.Merge is not null ? Merged(document)
        : _place!.Places.With(document, value => After(value, number, held))!;

    private static Outcome<ChangeOperation> ToOf(DocumentChange change, ChangePlace place, object document, ChangeSchema schema)
    {
        if (place.Pointers.Count == 0)
            return new ChangeOperation(change, place, null, document.GetType());
        var json = change.To!.Utf8;
        if (change.To.Value.ValueKind == JsonValueKind.Null && place.Member?.MayBeNull == true)
            return new ChangeOperation(change, place, null, document.GetType()) { Pointers = place.Pointers };
        try
        {
            var isWhole = place.Places is PointedAt.Here;
            if (isWhole && schema.FixedIn(change.To.Value, document) is { } name)
                return new Fault("/to", FaultCodes.LeadsNowhere, $"\"{name}\" cannot change.");
            var faults = BodyReader.Check(json, isWhole ? schema.Whole : place.Schema, isStored: false, "#" + place.Pointers[0]);
            if (faults.Count > 0)
                return faults.Select(error => new Fault("", error.Code, error.Detail)).ToList();
        }
        catch (UnreadableException e)
        {
            return new Fault("", e.Error.Code, e.Error.Detail);
        }

        var value = JsonSerializer.Deserialize(json, place.Type, WireJson.Options);
        return new ChangeOperation(change, place, place.Places is PointedAt.Here ? schema.WithFixed(value!, document) : value, document.GetType())
        {
            Pointers = place.Pointers,
        };
    }

    private static Outcome<ChangeOperation> ChangeOf(DocumentChange change, ChangePlace place, object document)
    {
        if (change.Remove == true)
            return change.At!.Length == 0 ? new Fault("/at", FaultCodes.LeadsNowhere, "A document as a whole cannot be taken out.")
                : place is { Member: { Required: true } member }
                    ? new Fault("/at", FaultCodes.Required, $"{member.Name} must be there; give it with to.")
                : new ChangeOperation(change, place, DefaultOf(place, document), document.GetType()) { Pointers = place.Pointers };
        var isNumber = place.Schema is null or BodySchema.Number;
        if (!isNumber || (change.To is null && place.Pointers.Count > 0 && place.Values.All(value => value is null)))
            return new Fault("/at", InputCodes.NotANumber, isNumber
                ? "There is no number to start from; give one with to."
                : $"at leads to no number, so {(change.By is not null ? "by" : change.Plus is not null ? "plus" : "a range")} cannot change it.");
        return new ChangeOperation(change, place, null, document.GetType()) { Pointers = place.Pointers };
    }

    /// <summary>The default of a property, as a record has it that was just made.</summary>
    private static object? DefaultOf(ChangePlace place, object document) => place.Member is not { } member ? null
        : member.Of(Activator.CreateInstance(member.Property.ReflectedType ?? document.GetType())!);

    private static Outcome<ChangeOperation> MergeOf(DocumentChange change, AnyJson merge, object document, ChangeSchema schema)
    {
        foreach (var member in merge.Value.EnumerateObject())
            if (schema.Root.All.All(known => known.Name != member.Name))
                return new Fault("/merge", FaultCodes.LeadsNowhere,
                    $"\"{member.Name}\" is not a property there that can change{WordHints.OfProperty(member.Name, schema.Root)}.");
        var operation = new ChangeOperation(change, null, null, document.GetType()) { Pointers = [.. PointersIn(merge.Value, "")] };
        try
        {
            var faults = BodyReader.Check(operation.MergedText(document), schema.Whole)
                .Where(error => !IsOfDigits(error.Code) || operation.Pointers.Any(at => IsAtOrBelow(error.Pointer![1..], at)))
                .Select(error => new Fault("", error.Code, error.Detail)).ToList();
            return faults.Count > 0 ? faults : operation;
        }
        catch (UnreadableException e)
        {
            return new Fault("", e.Error.Code, e.Error.Detail);
        }
    }

    private static bool IsOfDigits(Code code) => code == InputCodes.TooManyDigits || code == FaultCodes.TooManyDecimals;

    private static bool IsAtOrBelow(string pointer, string at) => pointer == at || pointer.StartsWith(at + "/", StringComparison.Ordinal);

    private static IEnumerable<string> PointersIn(JsonElement patch, string at) => patch.ValueKind != JsonValueKind.Object ? [at]
        : patch.EnumerateObject().SelectMany(member => PointersIn(member.Value, $"{at}/{DocumentPointer.Escape(member.Name)}"));

    private byte[] MergedText(object document) => JsonSerializer.SerializeToUtf8Bytes(
        MergePatch.Of(JsonSerializer.SerializeToNode(document, _document, WireJson.Options), JsonNode.Parse(_change.Merge!.Value.GetRawText())));

    private object Merged(object document) => JsonSerializer.Deserialize(MergedText(document), _document, WireJson.Options)!;

    private object? After(object? value, decimal? number, Held? held) => number is not { } given ? _value
        : _change.To is not null ? Bounded(given, held)
        : value is not decimal before ? value // of every item, those without a number stay
        : Bounded(_change.By is not null ? before * given : before + given, held);

    private decimal Bounded(decimal number, Held? held)
    {
        if (held is null || Field is not { } field)
            return number;
        var least = field.Above ? field.MinimumValue + new decimal(1, 0, 0, false, (byte)field.Decimals) : field.MinimumValue;
        var bounded = decimal.Clamp(number, least, field.MaximumValue);
        held.IsHeld |= bounded != number;
        return bounded;
    }
}

/// <summary>Whether a number was held at the bounds of its field.</summary>
public sealed class Held
{
    public bool IsHeld { get; set; }
}
