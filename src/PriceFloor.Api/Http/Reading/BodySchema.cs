using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.ComponentModel.DataAnnotations;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json;

namespace PriceFloor.Api.Http.Reading;

/// <summary>The schema of a value in a body, derived from its C# type.</summary>
public abstract record BodySchema
{
    private static readonly ConcurrentDictionary<Type, BodySchema> s_objects = new();

    public sealed record Number(NumberFieldAttribute? Field) : BodySchema;

    public sealed record Text(int Minimum, int Maximum) : BodySchema;

    public sealed record Choice(IReadOnlyList<string> Words) : BodySchema;

    public sealed record Boolean : BodySchema;

    public sealed record Date : BodySchema;

    public sealed record Time : BodySchema;

    public sealed record Array(BodySchema Item, int Minimum, int Maximum) : BodySchema;

    /// <summary>An object whose names the caller chooses: each has a value of one kind.</summary>
    public sealed record Map(BodySchema Item, int Maximum) : BodySchema;

    /// <summary>Either the key of a stored document or the document itself.</summary>
    public sealed record KeyOr(BodySchema Document) : BodySchema;

    /// <summary>A number, or an object in its place.</summary>
    public sealed record NumberOr(BodySchema Other) : BodySchema;

    /// <summary>A list, or a word in its place.</summary>
    public sealed record WordOr(Choice Word, Array List) : BodySchema;

    /// <summary>Any JSON value.</summary>
    public sealed record Any : BodySchema;

    /// <summary>The bounds of the number at a path of a record; null if no number stands there.</summary>
    public static NumberFieldAttribute? NumberAt(Type record, ReadOnlySpan<string> path)
    {
        var schema = Of(record);
        foreach (var name in path)
            schema = schema is Members members && members.All.FirstOrDefault(member => member.Name == name) is { } member
                ? member.BodySchema()
                : schema;
        return schema is Number { Field: var field } ? field : null;
    }

    /// <summary>The members of a record of this type.</summary>
    public sealed record Members(Type Type, ImmutableArray<Member> All, IReadOnlySet<string> ReadOnly) : BodySchema
    {
        public ImmutableArray<Member> Required { get; } = [.. All.Where(member => member.Required)];

        /// <summary>The member with a name as bodies write it.</summary>
        public Member? Named(ReadOnlySpan<byte> utf8)
        {
            foreach (var member in All)
                if (utf8.SequenceEqual(member.Utf8Name))
                    return member;
            return null;
        }
    }

    public sealed record Member(string Name, int Place, Func<BodySchema> BodySchema, bool Required, bool MayBeNull, PropertyInfo Property)
    {
        public byte[] Utf8Name { get; } = Encoding.UTF8.GetBytes(Name);

        /// <summary>The pointer to it if it is a member of the whole body.</summary>
        public string AtRoot { get; } = $"#/{Name}";

        /// <summary>Its value in a record.</summary>
        public object? Of(object record) => Property.GetValue(record);
    }

    public static BodySchema Of(Type type) => Of(type, member: null);

    private static BodySchema Of(Type type, MemberInfo? member)
    {
        var bare = Nullable.GetUnderlyingType(type) ?? type;
        var most = member?.GetCustomAttribute<MaxLengthAttribute>()?.Length ?? Limits.NameLength;
        if (bare == typeof(decimal)) return new Number(member?.GetCustomAttribute<NumberFieldAttribute>());
        if (bare == typeof(string)) return new Text(member?.IsDefined(typeof(RequiredMemberAttribute)) == true ? 1 : 0, most);
        if (bare == typeof(bool)) return new Boolean();
        if (bare == typeof(DateOnly)) return new Date();
        if (bare == typeof(DateTimeOffset)) return new Time();
        if (bare.IsEnum) return new Choice([.. Enum.GetNames(bare).Select(JsonNamingPolicy.KebabCaseLower.ConvertName)]);
        if (bare.IsGenericType && bare.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
            return new Array(member?.GetCustomAttribute<EachTextAttribute>() is { } each
                ? new Text(each.Minimum, each.Maximum)
                : Of(bare.GetGenericArguments()[0], member), member?.GetCustomAttribute<MinLengthAttribute>()?.Length ?? 0, most);
        if (bare.IsGenericType && bare.GetGenericTypeDefinition() == typeof(IReadOnlyDictionary<,>))
            return new Map(Of(bare.GetGenericArguments()[1], member), most);
        if (bare.IsGenericType && bare.GetGenericTypeDefinition() == typeof(KeyOr<>))
            return new KeyOr(Inline((Members)Of(bare.GetGenericArguments()[0])));
        if (bare.IsGenericType && bare.GetGenericTypeDefinition() == typeof(NumberOr<>))
            return new NumberOr(Of(bare.GetGenericArguments()[0]));
        if (bare.IsGenericType && bare.GetGenericTypeDefinition() == typeof(WordOrList<,>))
            return new WordOr((Choice)Of(bare.GetGenericArguments()[0]),
                new Array(Of(bare.GetGenericArguments()[1]), WordOrList<DayOfWeek, object>.Least, WordOrList<DayOfWeek, object>.Most));
        if (bare == typeof(AnyJson)) return new Any();
        return s_objects.GetOrAdd(bare, MembersOf);
    }

    /// <summary>An inline design or plan needs no profile's key: the request has the profile itself.</summary>
    private static Members Inline(Members document) =>
        new(document.Type, [.. document.All.Select(member => member.Name == "profile" ? member with { Required = false } : member)],
            document.ReadOnly);

    private static Members MembersOf(Type type)
    {
        var nullability = new NullabilityInfoContext();
        var members = type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.CanWrite)
            .Select((property, place) => new Member(
                JsonNamingPolicy.CamelCase.ConvertName(property.Name),
                place,
                Later(property),
                property.IsDefined(typeof(RequiredMemberAttribute)),
                nullability.Create(property).WriteState == NullabilityState.Nullable && !IsKeyOr(property.PropertyType)
                    && property.PropertyType != typeof(AnyJson),
                property));
        return new Members(type, [.. members], ReadOnlyFields.Of(type));
    }

    /// <summary>A key or a document is given or left out, never null: generated clients cannot distinguish three cases.</summary>
    private static bool IsKeyOr(Type type) => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(KeyOr<>);

    private static Func<BodySchema> Later(PropertyInfo property)
    {
        var shape = new Lazy<BodySchema>(() => Of(property.PropertyType, property));
        return () => shape.Value;
    }
}
