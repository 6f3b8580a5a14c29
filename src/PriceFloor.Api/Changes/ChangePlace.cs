using System.Collections;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Changes;

/// <summary>Where a pointer leads in one document, and what stands there.</summary>
internal sealed class ChangePlace
{
    private static readonly string[] s_names = ["material", "name", "channel"];

    private readonly List<string> _pointers = [];
    private readonly List<object?> _values = [];

    private ChangePlace(bool removes) => Removes = removes;

    /// <summary>The places in the document.</summary>
    public PointedAt Places { get; private set; } = new PointedAt.Here();

    /// <summary>The schema of a value there.</summary>
    public BodySchema Schema { get; private set; } = null!;

    /// <summary>The C# type of a value there.</summary>
    public Type Type { get; private set; } = null!;

    /// <summary>The member that stands there; null for an item of a list and for the whole document.</summary>
    public BodySchema.Member? Member { get; private set; }

    /// <summary>The pointer of each place, with indices for names and <c>*</c>.</summary>
    public IReadOnlyList<string> Pointers => _pointers;

    /// <summary>What stands at each place now.</summary>
    public IReadOnlyList<object?> Values => _values;

    /// <summary>Whether the places are items that go.</summary>
    public bool IsOut { get; private set; }

    /// <summary>Whether a new item, or a new entry of a map, goes there.</summary>
    public bool IsEnd { get; private set; }

    private bool Removes { get; }

    /// <summary>Where a pointer leads, or why it leads nowhere; the pointer of a fault is in the document.</summary>
    /// <param name="document">The document.</param>
    /// <param name="root">Its schema, without what no change may touch.</param>
    /// <param name="at">The pointer.</param>
    /// <param name="removes">Whether items that it leads to go, and not what is in them.</param>
    public static Outcome<ChangePlace> Find(object document, BodySchema.Members root, DocumentPointer at, bool removes)
    {
        var place = new ChangePlace(removes);
        var found = place.Below(document, root, root.Type, null, at.Tokens, "");
        if (found.Found is null)
            return found.Faults.ToList();
        place.Places = found.Value;
        return place;
    }

    private Outcome<PointedAt> Below(object? value, BodySchema schema, Type type, BodySchema.Member? member, IReadOnlyList<string> tokens, string at)
    {
        if (tokens.Count == 0)
            return End(new PointedAt.Here(), value, schema, type, member, at);
        var (token, rest) = (tokens[0], tokens.Skip(1).ToList());
        return schema switch
        {
            BodySchema.Members members when value is not null => InMember(value, members, token, rest, at),
            BodySchema.Array list when token == "-" && rest.Count == 0 && !Removes => AtEnd(list, ItemOf(type), at),
            BodySchema.Array list => InItems(value, list, ItemOf(type), token, rest, at),
            BodySchema.KeyOr inline when value is not null => InInline(value, inline, type, token, tokens, at),
            BodySchema.Map map => InEntry((IDictionary?)value, map, type.GetGenericArguments()[1], token, rest, at),
            _ => Nowhere($"{at}/{DocumentPointer.Escape(token)}", value is null && schema is BodySchema.Members
                ? $"The document has no \"{LastOf(at)}\"; give all of it with to."
                : "Nothing lies below a value that is neither an object nor a list."),
        };
    }

    private Outcome<PointedAt> InMember(object value, BodySchema.Members members, string token, List<string> rest, string at)
    {
        if (members.All.FirstOrDefault(member => member.Name == token) is not { } member)
            return Nowhere($"{at}/{DocumentPointer.Escape(token)}",
                $"\"{token}\" is not a property there that can change{WordHints.OfProperty(token, members)}.");
        var below = Below(member.Of(value), member.BodySchema(), member.Property.PropertyType, member, rest, $"{at}/{member.Name}");
        return below.Found is { } found ? new PointedAt.InMember(member, found) : below;
    }

    /// <summary>Places in a document that stands in the place of a key.</summary>
    private Outcome<PointedAt> InInline(object value, BodySchema.KeyOr inline, Type type, string token, IReadOnlyList<string> tokens, string at)
    {
        var property = type.GetProperty(nameof(KeyOr<object>.Document))!;
        if (property.GetValue(value) is not { } document)
            return Nowhere($"{at}/{DocumentPointer.Escape(token)}", "A stored document is named there; change that one.");
        var below = Below(document, inline.Document, property.PropertyType, null, tokens, at);
        return below.Found is { } found ? new PointedAt.InProperty(property, found) : below;
    }

    /// <summary>An entry by its name; a name that is not there yet is a place for a new one.</summary>
    private Outcome<PointedAt> InEntry(IDictionary? entries, BodySchema.Map map, Type entryType, string token, List<string> rest, string at)
    {
        var (here, isThere) = ($"{at}/{DocumentPointer.Escape(token)}", entries?.Contains(token) == true);
        if (!isThere && (rest.Count > 0 || Removes))
            return Nowhere(here, $"There is no \"{token}\"{NearestName.Hint(token, [.. NamesIn(entries)])}; case counts.");
        IsEnd |= !isThere;
        IsOut |= Removes && rest.Count == 0;
        var below = Below(isThere ? entries![token] : null, map.Item, entryType, null, rest, here);
        return below.Found is { } found ? new PointedAt.InEntry(entryType, token, IsOut ? null : found) : below;
    }

    private static IEnumerable<string> NamesIn(IDictionary? entries) =>
        (entries?.Keys.Cast<string>() ?? []).Order(StringComparer.Ordinal);

    private Outcome<PointedAt> AtEnd(BodySchema.Array list, Type itemType, string at)
    {
        IsEnd = true;
        return End(new PointedAt.AtEnd(itemType), null, list.Item, itemType, null, $"{at}/-");
    }

    private Outcome<PointedAt> InItems(object? value, BodySchema.Array list, Type itemType, string token, List<string> rest, string at)
    {
        var items = ((IEnumerable?)value ?? Array.Empty<object>()).Cast<object>().ToList();
        var chosen = ListToken.Items(token, [.. items.Select(item => NameOf(item, list.Item))], $"{at}/{DocumentPointer.Escape(token)}");
        if (chosen.Found is not { } indices)
            return chosen.Faults.ToList();
        if (Removes && rest.Count == 0)
        {
            IsOut = true;
            foreach (var index in indices)
                End(new PointedAt.Here(), items[index], list.Item, itemType, null, FormattableString.Invariant($"{at}/{index}"));
            return new PointedAt.Out(itemType, indices.ToHashSet());
        }

        var below = indices.Select(index =>
            (index, Found: Below(items[index], list.Item, itemType, null, rest, FormattableString.Invariant($"{at}/{index}")))).ToList();
        // of every item, those that have the place are meant
        if (below.FirstOrDefault(one => one.Found.Found is null).Found is { } fault
                && (token != ListToken.Every || below.All(one => one.Found.Found is null)))
            return fault;
        return new PointedAt.InItems(itemType, [.. below.Where(one => one.Found.Found is not null).Select(one => (one.index, one.Found.Value))]);
    }

    private PointedAt End(PointedAt here, object? value, BodySchema schema, Type type, BodySchema.Member? member, string at)
    {
        (Schema, Type, Member) = (schema, type, member);
        _pointers.Add(at);
        _values.Add(value);
        return here;
    }

    private static Outcome<PointedAt> Nowhere(string at, string detail) => new Fault(at, FaultCodes.LeadsNowhere, detail);

    private static Type ItemOf(Type list) => list.GetGenericArguments()[0];

    private static string LastOf(string at) => at[(at.LastIndexOf('/') + 1)..];

    /// <summary>What a pointer may call an item: its material, its name or its channel.</summary>
    private static string? NameOf(object item, BodySchema schema) => schema is not BodySchema.Members members ? null
        : s_names.Select(name => members.All.FirstOrDefault(member => member.Name == name)?.Of(item)).OfType<string>().FirstOrDefault();
}
