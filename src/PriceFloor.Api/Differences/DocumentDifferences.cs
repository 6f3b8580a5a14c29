using System.Collections;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Pictures;

namespace PriceFloor.Api.Differences;

/// <summary>
/// What differs between two revisions of a document, in plain words: each figure with what it was and what it is, called by the name of what it
/// belongs to and never by its place in a list. Nothing is left out.
/// </summary>
public sealed class DocumentDifferences
{
    private readonly List<string> _said = [];
    private readonly ValueWords _values;

    private DocumentDifferences(string? currency) => _values = new ValueWords(currency);

    /// <param name="subject">What the document is called: "profile", "channel web".</param>
    /// <param name="before">The earlier document.</param>
    /// <param name="after">The later document.</param>
    /// <param name="currency">ISO 4217 code of its amounts; null if it is not known, and amounts are written as they are.</param>
    public static IReadOnlyList<string> Between<T>(string subject, T before, T after, string? currency) where T : class
    {
        var differences = new DocumentDifferences(currency);
        differences.Compare(subject, "", before, after);
        return differences._said;
    }

    /// <summary>A document that was not there before, with all that it says.</summary>
    public static string New<T>(string subject, T document, string? currency) where T : class
    {
        var differences = new DocumentDifferences(currency);
        differences.SayNew(subject, "", document);
        return differences._said[0];
    }

    /// <summary>A document that is gone, with all that it said.</summary>
    public static string Gone<T>(string subject, T document, string? currency) where T : class
    {
        var differences = new DocumentDifferences(currency);
        differences.SayGone(subject, "", document);
        return differences._said[0];
    }

    private void Compare(string subject, string within, object before, object after)
    {
        if (RecurringWords.Of(before, _values) is { } was && RecurringWords.Of(after, _values) is { } now && was != now)
            Say(subject, within, was.From(now), now.Text);
        foreach (var member in MembersOf(before.GetType()).Where(member => !RecurringWords.Says(before, member.Name)))
        {
            var (old, present) = (member.Of(before), member.Of(after));
            var field = FieldWords.Of(member.Property);
            switch (member.BodySchema())
            {
                case BodySchema.Members:
                    CompareParts(subject, Joined(within, field), old, present);
                    break;
                case BodySchema.Array { Item: BodySchema.Members } list:
                    CompareLists(subject, within, ((BodySchema.Members)list.Item).Type, Items(old), Items(present));
                    break;
                default:
                    if (_values.Of(member.Property, old) is var one && _values.Of(member.Property, present) is var other && one != other)
                        Say(subject, Joined(within, field), one, other);
                    break;
            }
        }
    }

    private void CompareParts(string subject, string within, object? before, object? after)
    {
        if (before is not null && after is not null)
            Compare(subject, within, before, after);
        else if (after is not null)
            SayNew(subject, within, after);
        else if (before is not null)
            SayGone(subject, within, before);
    }

    /// <summary>Items of the same name belong together; of several with one name, the first to the first.</summary>
    private void CompareLists(string subject, string within, Type item, List<object> before, List<object> after)
    {
        var (old, present) = (ItemNames.Of(item, before, _values), ItemNames.Of(item, after, _values));
        foreach (var (name, now) in present)
        {
            var (of, below) = Called(subject, within, item, name);
            CompareParts(of, below, old.GetValueOrDefault(name), now);
        }

        foreach (var (name, was) in old.Where(one => !present.ContainsKey(one.Key)))
        {
            var (of, below) = Called(subject, within, item, name);
            SayGone(of, below, was);
        }
    }

    /// <summary>What a profile lists is known by its own name; a step or a fee belongs to its design or channel.</summary>
    private static (string Subject, string Within) Called(string subject, string within, Type item, string name) =>
        FieldWords.StandsAlone(item) ? (name, "") : (subject, Joined(within, name));

    private void SayNew(string subject, string within, object record) => _said.Add($"{Head(subject, within)} new{Whole(record, ", ", "")}");

    private void SayGone(string subject, string within, object record) => _said.Add($"{Head(subject, within)} gone{Whole(record, " (was ", ")")}");

    private void Say(string subject, string field, string before, string after) =>
        _said.Add(before.Length == 0 || after.Length == 0 ? $"{Head(subject, field)} changed" : $"{Head(subject, field)} {before} to {after}");

    /// <summary>All that a record says which is not said anyway.</summary>
    private string Whole(object record, string opening, string closing)
    {
        var words = new List<string>();
        if (RecurringWords.Of(record, _values) is { } recurring)
            words.Add(recurring.Text);
        foreach (var member in MembersOf(record.GetType()).Where(member => !RecurringWords.Says(record, member.Name)))
            if (member.Of(record) is { } value && member.Name != "currency" && !FieldWords.IsName(member.Property)
                    && !UsualValues.Has(member.Property, value))
                words.Add(value is IList { Count: var count } ? Joined(FieldWords.Of(member.Property), DisplayText.Number(count))
                    : member.BodySchema() is BodySchema.Members ? Joined(FieldWords.Of(member.Property), Whole(value, "", ""))
                    : Joined(FieldWords.Of(member.Property), _values.Of(member.Property, value)));
        return words.Count == 0 ? "" : opening + string.Join(", ", words) + closing;
    }

    private static string Head(string subject, string field) => field.Length == 0 ? $"{subject}:" : $"{subject}: {field}";

    private static string Joined(string one, string other) => one.Length == 0 ? other : other.Length == 0 ? one : $"{one} {other}";

    private static List<object> Items(object? list) => [.. ((IEnumerable?)list)?.Cast<object>() ?? []];

    private static IEnumerable<BodySchema.Member> MembersOf(Type type) => ((BodySchema.Members)BodySchema.Of(type)).All;
}
