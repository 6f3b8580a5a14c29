using System.Collections;
using System.Globalization;

namespace PriceFloor.Api.Http.Reading;

/// <summary>
/// Walks a document that the service made itself, such as a draft, along the schema for bodies: it is valid exactly if its JSON text would be.
/// </summary>
public static class RecordReader
{
    /// <summary>Every fault of its values, in order of appearance. The validator has the rules between fields.</summary>
    /// <param name="document">The document.</param>
    /// <param name="anyDecimals">Whether its numbers may have any number of digits and decimals, as the results of a multiplication do.</param>
    public static IReadOnlyList<InputError> Check<T>(T document, bool anyDecimals = false) where T : class =>
        [.. Faults(document, BodySchema.Of(typeof(T)), "#", anyDecimals)];

    /// <summary>The same of a value that stands at a pointer.</summary>
    public static IEnumerable<InputError> Faults(object value, BodySchema schema, string pointer, bool anyDecimals = false) => (schema, value) switch
    {
        (BodySchema.Members members, _) => members.All.SelectMany(member => OfMember(value, member, $"{pointer}/{member.Name}", anyDecimals)),
        (BodySchema.Array list, IEnumerable items) => OfList([.. items.Cast<object>()], list, pointer, anyDecimals),
        (BodySchema.KeyOr inline, _) => value.GetType().GetProperty(nameof(KeyOr<object>.Document))!.GetValue(value) is { } document
            ? Faults(document, inline.Document, pointer, anyDecimals)
            : [],
        (BodySchema.Map map, IDictionary items) => OfMap(items, map, pointer, anyDecimals),
        (BodySchema.Number number, decimal amount) when anyDecimals => One(FieldRules.OfRange(amount, pointer, number.Field)),
        (BodySchema.Number number, decimal amount) => One(FieldRules.OfNumber(amount.ToString(CultureInfo.InvariantCulture), pointer, number.Field)),
        (BodySchema.Text text, string words) => One(FieldRules.OfText(words, pointer, text.Minimum, text.Maximum)),
        _ => [], // an enum, a day or a bool cannot be wrong in a record
    };

    private static IEnumerable<InputError> OfMember(object owner, BodySchema.Member member, string pointer, bool anyDecimals) =>
        member.Of(owner) is { } value ? Faults(value, member.BodySchema(), pointer, anyDecimals)
        : member.Required ? [FieldRules.Missing(member.Name, pointer)]
        : [];

    private static IEnumerable<InputError> OfList(IReadOnlyList<object> items, BodySchema.Array list, string pointer, bool anyDecimals) =>
        FieldRules.OfCount(items.Count, pointer, list) is { } fault
            ? [fault]
            : items.SelectMany((item, index) => Faults(item, list.Item, FormattableString.Invariant($"{pointer}/{index}"), anyDecimals));

    private static IEnumerable<InputError> OfMap(IDictionary items, BodySchema.Map map, string pointer, bool anyDecimals)
    {
        if (FieldRules.OfCount(items.Count, pointer, 0, map.Maximum) is { } fault)
            yield return fault;
        foreach (DictionaryEntry item in items)
        {
            var at = $"{pointer}/{DocumentPointer.Escape((string)item.Key)}";
            foreach (var one in One(FieldRules.OfText((string)item.Key, at, 1, Limits.NameLength))
                .Concat(Faults(item.Value!, map.Item, at, anyDecimals)))
                yield return one;
        }
    }

    private static IEnumerable<InputError> One(InputError? fault) => fault is null ? [] : [fault];
}
