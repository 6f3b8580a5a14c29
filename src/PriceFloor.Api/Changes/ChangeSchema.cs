using System.Text.Json;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Changes;

/// <summary>What of a kind of document can change: all but its names and what ties it to another document.</summary>
public sealed class ChangeSchema
{
    private readonly string? _fixed;
    private readonly BodySchema.Member? _fixedMember;

    private ChangeSchema(Type type, string? fixedName)
    {
        var members = (BodySchema.Members)BodySchema.Of(type);
        _fixed = fixedName;
        _fixedMember = members.All.FirstOrDefault(member => member.Name == fixedName);
        Root = new BodySchema.Members(type, [.. members.All.Where(member => member.Name != fixedName)], members.ReadOnly);
        Whole = new BodySchema.Members(type, [.. members.All.Select(member => member.Name == fixedName ? member with { Required = false } : member)],
            members.ReadOnly);
    }

    /// <summary>The members that a pointer can lead to.</summary>
    public BodySchema.Members Root { get; }

    /// <summary>The whole document as it may be given; what cannot change may be left out.</summary>
    public BodySchema.Members Whole { get; }

    /// <param name="fixedName">A property that cannot change; null if every one can.</param>
    public static ChangeSchema Of<T>(string? fixedName = null) where T : class => new(typeof(T), fixedName);

    /// <summary>The property that a whole document would change although it cannot; null if there is none.</summary>
    internal string? FixedIn(JsonElement whole, object document) => _fixed is not null && whole.ValueKind == JsonValueKind.Object
        && whole.TryGetProperty(_fixed, out var given) && !(given.ValueKind == JsonValueKind.String && given.ValueEquals(FixedOf(document)))
            ? _fixed : null;

    /// <summary>A whole document with what cannot change.</summary>
    internal object WithFixed(object whole, object document)
    {
        _fixedMember?.Property.SetValue(whole, FixedOf(document));
        return whole;
    }

    private string? FixedOf(object document) => _fixedMember?.Of(document) as string;
}
