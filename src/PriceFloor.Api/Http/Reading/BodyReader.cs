using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace PriceFloor.Api.Http.Reading;

/// <summary>
/// Walks a JSON body along its schema. What cannot be read (not JSON, a wrong JSON type, a null, an unknown or duplicate property) throws with line
/// and column; every other fault of a value is collected, so all of them are reported at once.
/// </summary>
public sealed partial class BodyReader
{
    private const string Root = "#";

    private readonly byte[] _body;
    private readonly bool _isStored;
    private List<InputError>? _faults;
    private string _pointer;

    private BodyReader(byte[] body, bool isStored, string pointer) => (_body, _isStored, _pointer) = (body, isStored, pointer);

    /// <summary>The value faults of a body, in order of appearance.</summary>
    /// <param name="body">The body.</param>
    /// <param name="shape">Its schema.</param>
    /// <param name="isStored">Whether it is the text of a stored document, perhaps from an earlier program.</param>
    /// <param name="pointer">Its place, if it is a part of a document that comes as JSON of its own.</param>
    public static IReadOnlyList<InputError> Check(byte[] body, BodySchema shape, bool isStored = false, string pointer = Root)
    {
        var reader = new BodyReader(body, isStored, pointer);
        try
        {
            return reader.Walk(shape, pointer);
        }
        catch (JsonException e)
        {
            throw new UnreadableException(new InputError
            {
                Pointer = reader._pointer,
                Code = InputCodes.Malformed,
                Detail = "The body is not JSON here: check for a missing or extra comma, quote or bracket, a comment, or text after the end.",
                Line = e.LineNumber + 1,
                Column = e.BytePositionInLine + 1,
            });
        }
    }

    private IReadOnlyList<InputError> Walk(BodySchema shape, string pointer)
    {
        if (!Utf8.IsValid(_body))
            throw new UnreadableException(new InputError
            {
                Pointer = pointer,
                Code = InputCodes.Malformed,
                Detail = "The body is not UTF-8; save and send it as UTF-8.",
                Line = 1,
                Column = 1,
            });

        var json = new Utf8JsonReader(_body, JsonText.Options);
        json.Read();
        Value(ref json, shape, pointer);
        _pointer = pointer;
        json.Read();
        return _faults ?? (IReadOnlyList<InputError>)[];
    }

    private void Value(ref Utf8JsonReader json, BodySchema shape, string pointer)
    {
        _pointer = pointer;
        switch (shape)
        {
            case BodySchema.KeyOr either when json.TokenType == JsonTokenType.StartObject:
                Value(ref json, either.Document, pointer);
                break;
            case BodySchema.KeyOr:
                Require(ref json, pointer, "an object, or a string with the key of a stored one", JsonTokenType.String);
                TextValue(ref json, pointer, 1, Limits.KeyLength);
                break;
            case BodySchema.NumberOr either when json.TokenType == JsonTokenType.StartObject:
                Value(ref json, either.Other, pointer);
                break;
            case BodySchema.NumberOr:
                Require(ref json, pointer, "a number, or an object with low and high", JsonTokenType.Number, JsonTokenType.String);
                NumberValue(ref json, s_anyNumber, pointer);
                break;
            case BodySchema.WordOr either when json.TokenType == JsonTokenType.StartArray:
                Value(ref json, either.List, pointer);
                break;
            case BodySchema.WordOr either:
                Require(ref json, pointer, $"a list, or the word \"{either.Word.Words[0]}\"", JsonTokenType.String);
                WordValue(Text(ref json, pointer), either.Word, pointer);
                break;
            case BodySchema.Any:
                AnyValue(ref json, pointer);
                break;
            case BodySchema.Members members:
                Require(ref json, pointer, "an object", JsonTokenType.StartObject);
                MembersValue(ref json, members, pointer);
                break;
            case BodySchema.Array many:
                Require(ref json, pointer, "a list", JsonTokenType.StartArray);
                ManyValue(ref json, many, pointer);
                break;
            case BodySchema.Map map:
                Require(ref json, pointer, "an object", JsonTokenType.StartObject);
                MapValue(ref json, map, pointer);
                break;
            case BodySchema.Boolean:
                Require(ref json, pointer, "true or false", JsonTokenType.True, JsonTokenType.False);
                break;
            case BodySchema.Number number:
                Require(ref json, pointer, "a number", JsonTokenType.Number, JsonTokenType.String);
                NumberValue(ref json, number, pointer);
                break;
            case BodySchema.Text { Minimum: var least, Maximum: var most }:
                Require(ref json, pointer, "a string", JsonTokenType.String);
                TextValue(ref json, pointer, least, most);
                break;
            default:
                Require(ref json, pointer, "a string", JsonTokenType.String);
                WordValue(Text(ref json, pointer), shape, pointer);
                break;
        }
    }

    private void MembersValue(ref Utf8JsonReader json, BodySchema.Members members, string pointer)
    {
        Span<bool> given = stackalloc bool[members.All.Length];
        HashSet<string>? ignored = null;
        while (json.Read() && json.TokenType != JsonTokenType.EndObject)
        {
            if (members.Named(json.ValueIsEscaped ? Encoding.UTF8.GetBytes(Text(ref json, pointer)) : json.ValueSpan) is not { } member)
            {
                Ignore(ref json, members, pointer, ignored ??= []);
                continue;
            }

            var at = pointer == Root ? member.AtRoot : $"{pointer}/{member.Name}";
            if (given[member.Place])
                throw Unreadable(ref json, at, InputCodes.DuplicateProperty, $"\"{member.Name}\" is given twice; leave one out.");
            given[member.Place] = true;
            json.Read();
            if (json.TokenType == JsonTokenType.Null && member.MayBeNull)
                continue;
            Value(ref json, member.BodySchema(), at);
            _pointer = pointer;
        }

        foreach (var member in members.Required)
            if (!given[member.Place])
                Fault(FieldRules.Missing(member.Name, $"{pointer}/{member.Name}"));
    }

    /// <summary>Skips properties that an answer adds to a document, so the answer can be sent back; any other unknown one is a fault.</summary>
    private void Ignore(ref Utf8JsonReader json, BodySchema.Members members, string pointer, HashSet<string> before)
    {
        var name = Text(ref json, pointer);
        var at = $"{pointer}/{DocumentPointer.Escape(name)}";
        if (!members.ReadOnly.Contains(name))
            throw Unreadable(ref json, at, InputCodes.UnknownProperty,
                $"\"{Short(name)}\" is not a property here{WordHints.OfProperty(name, members)}; correct the name or leave it out.");
        if (!before.Add(name))
            throw Unreadable(ref json, at, InputCodes.DuplicateProperty, $"\"{name}\" is given twice; leave one out.");
        PassOver(ref json, at);
    }

    /// <summary>Skips a value, but checks that every string in it is text, so later readers do not fail on it.</summary>
    private void PassOver(ref Utf8JsonReader json, string pointer)
    {
        json.Read();
        var depth = json.CurrentDepth;
        do
        {
            if (json.TokenType is JsonTokenType.String or JsonTokenType.PropertyName && json.ValueIsEscaped)
                Text(ref json, pointer);
        }
        while (json.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray || json.CurrentDepth > depth ? json.Read() : false);
    }

    private void ManyValue(ref Utf8JsonReader json, BodySchema.Array many, string pointer)
    {
        var index = 0;
        var faultsBefore = _faults?.Count ?? 0;
        while (json.Read() && json.TokenType != JsonTokenType.EndArray)
            Value(ref json, many.Item, $"{pointer}/{index++}");
        if (FieldRules.OfCount(index, pointer, many) is not { } fault)
            return;
        if (fault.Code == InputCodes.TooMany)
            _faults?.RemoveRange(faultsBefore, _faults.Count - faultsBefore);
        Fault(fault);
    }

    /// <summary>Names that the caller chooses are texts: their values are at the pointer with the name escaped.</summary>
    private void MapValue(ref Utf8JsonReader json, BodySchema.Map map, string pointer)
    {
        var names = new HashSet<string>();
        while (json.Read() && json.TokenType != JsonTokenType.EndObject)
        {
            var name = Text(ref json, pointer);
            var at = $"{pointer}/{DocumentPointer.Escape(name)}";
            if (!names.Add(name))
                throw Unreadable(ref json, at, InputCodes.DuplicateProperty, $"\"{Short(name)}\" is given twice; leave one out.");
            if (FieldRules.OfText(name, at, 1, Limits.NameLength, _isStored) is { } fault)
                Fault(fault);
            json.Read();
            Value(ref json, map.Item, at);
            _pointer = pointer;
        }

        if (FieldRules.OfCount(names.Count, pointer, 0, map.Maximum) is { } many)
            Fault(many);
    }

    private void Require(ref Utf8JsonReader json, string pointer, string wanted, params ReadOnlySpan<JsonTokenType> types)
    {
        if (types.Contains(json.TokenType))
            return;
        var name = FieldRules.Name(pointer);
        throw json.TokenType == JsonTokenType.Null
            ? Unreadable(ref json, pointer, InputCodes.Null, $"{name} is null; give {wanted}, or leave the property out if it is optional.")
            : Unreadable(ref json, pointer, InputCodes.WrongType, $"{name} must be {wanted}.");
    }

    private string Text(ref Utf8JsonReader json, string pointer) =>
        JsonText.Of(ref json) ?? throw Unreadable(ref json, pointer, InputCodes.Malformed, JsonText.HalfAPair);

    private UnreadableException Unreadable(ref Utf8JsonReader json, string pointer, Code code, string detail)
    {
        var before = _body.AsSpan(0, (int)json.TokenStartIndex);
        return new UnreadableException(new InputError
        {
            Pointer = pointer,
            Code = code,
            Detail = detail,
            Line = before.Count((byte)'\n') + 1,
            Column = before.Length - (before.LastIndexOf((byte)'\n') + 1) + 1,
        });
    }

    private void Fault(InputError error) => (_faults ??= []).Add(error);

    private void Fault(string pointer, Code code, string detail) => Fault(new InputError { Pointer = pointer, Code = code, Detail = detail });

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "...";
}
