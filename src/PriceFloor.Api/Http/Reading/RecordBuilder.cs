using System.Text.Json;
using FluentValidation;

namespace PriceFloor.Api.Http.Reading;

/// <summary>
/// A document that is built value by value, over a stored one or from nothing. It is checked as a record, by the rules of bodies; only values that
/// come as JSON are read as JSON.
/// </summary>
public sealed class RecordBuilder<T> where T : class
{
    private static readonly BodySchema.Members s_schema = (BodySchema.Members)BodySchema.Of(typeof(T));

    private readonly Node _root;

    /// <param name="over">The document with the other values; null for a new one.</param>
    public RecordBuilder(T? over) => _root = new Node(s_schema, over);

    /// <summary>Sets the member at a path; null removes it. Missing objects on the path are made.</summary>
    public void Set(ReadOnlySpan<string> path, object? value) => _root.Set(path, value);

    /// <summary>Sets the member at a path to a value in JSON, which is read with the document.</summary>
    public void SetJson(ReadOnlySpan<string> path, byte[] json) => _root.Set(path, new Json(json));

    /// <summary>The document, or every fault, or the first thing that cannot be read.</summary>
    public Outcome<T> Read(IValidator<T> validator) => Read((document, faults) => Rules.Faults(validator, document, faults));

    /// <summary>A part of a document, whose rules between fields are the document's.</summary>
    public Outcome<T> Read() => Read((_, _) => []);

    private Outcome<T> Read(Func<T, List<InputError>, IEnumerable<InputError>> rules)
    {
        try
        {
            var faults = new List<InputError>();
            var document = (T)_root.Build("#", faults);
            faults.AddRange([.. rules(document, faults)]);
            return faults.Count == 0 ? document : faults.Select(error => (Fault)RequestFault.Invalid(error)).ToList();
        }
        catch (UnreadableException e)
        {
            return RequestFault.Unreadable(e.Error);
        }
    }

    private sealed record Json(byte[] Text)
    {
        public object? Read(BodySchema.Member member, string pointer, List<InputError> faults)
        {
            faults.AddRange(BodyReader.Check(Text, member.BodySchema(), isStored: false, pointer));
            return JsonSerializer.Deserialize(Text, member.Property.PropertyType, WireJson.Options);
        }
    }

    /// <summary>An object of the document: the value of each member, a nested node, or JSON.</summary>
    private sealed class Node(BodySchema.Members schema, object? from)
    {
        private readonly object?[] _values = [.. schema.All.Select(member => from is null ? null : member.Of(from))];

        public void Set(ReadOnlySpan<string> path, object? value)
        {
            var name = path[0];
            var member = schema.All.Single(member => member.Name == name);
            ref var mine = ref _values[member.Place];
            if (path.Length == 1)
                mine = value;
            else if (mine is Node inner)
                inner.Set(path[1..], value);
            else if (mine is not null || value is not null)
            {
                var made = new Node((BodySchema.Members)member.BodySchema(), mine);
                made.Set(path[1..], value);
                mine = made;
            }
        }

        public object Build(string pointer, List<InputError> faults)
        {
            var record = Activator.CreateInstance(schema.Type)!; // with the default of each member
            foreach (var member in schema.All)
            {
                var at = $"{pointer}/{member.Name}";
                if (ValueOf(member, at, faults) is { } value)
                    member.Property.SetValue(record, value);
                else if (member.Required)
                    faults.Add(FieldRules.Missing(member.Name, at));
            }

            return record;
        }

        private object? ValueOf(BodySchema.Member member, string pointer, List<InputError> faults)
        {
            switch (_values[member.Place])
            {
                case Node inner:
                    return inner.IsEmpty && !member.Required ? null : inner.Build(pointer, faults);
                case Json json:
                    return json.Read(member, pointer, faults);
                case { } value:
                    faults.AddRange(RecordReader.Faults(value, member.BodySchema(), pointer));
                    return value;
                default:
                    return null;
            }
        }

        private bool IsEmpty => Array.TrueForAll(_values, value => value is null or Node { IsEmpty: true });
    }
}
