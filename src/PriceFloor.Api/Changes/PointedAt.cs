using System.Collections;
using System.Reflection;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Changes;

/// <summary>
/// The places in a document that a pointer leads to. It is found once and can then be used again and again: a change makes a new document, which
/// shares everything that lies beside the way to these places.
/// </summary>
internal abstract record PointedAt
{
    private static readonly Func<object, object> s_copy =
        typeof(object).GetMethod("MemberwiseClone", BindingFlags.Instance | BindingFlags.NonPublic)!.CreateDelegate<Func<object, object>>();

    /// <summary>The value with what a change makes of each place.</summary>
    public abstract object? With(object? value, Func<object?, object?> change);

    /// <summary>The place itself.</summary>
    public sealed record Here : PointedAt
    {
        public override object? With(object? value, Func<object?, object?> change) => change(value);
    }

    /// <summary>Places below a member of a record.</summary>
    public sealed record InMember(BodySchema.Member Member, PointedAt Below) : PointedAt
    {
        public override object? With(object? value, Func<object?, object?> change)
        {
            var changed = s_copy(value!);
            Member.Property.SetValue(changed, Below.With(Member.Of(value!), change));
            return changed;
        }
    }

    /// <summary>Places below a property that has no name in JSON.</summary>
    public sealed record InProperty(PropertyInfo Property, PointedAt Below) : PointedAt
    {
        public override object? With(object? value, Func<object?, object?> change)
        {
            var changed = s_copy(value!);
            Property.SetValue(changed, Below.With(Property.GetValue(value), change));
            return changed;
        }
    }

    /// <summary>Places below some items of a list.</summary>
    public sealed record InItems(Type ItemType, IReadOnlyList<(int Index, PointedAt Below)> Items) : PointedAt
    {
        public override object? With(object? value, Func<object?, object?> change)
        {
            var changed = CopyOf(value, ItemType, more: 0);
            foreach (var (index, below) in Items)
                changed.SetValue(below.With(changed.GetValue(index), change), index);
            return changed;
        }
    }

    /// <summary>Places below an entry of a map, or the entry itself; one that goes has none below.</summary>
    public sealed record InEntry(Type EntryType, string Name, PointedAt? Below) : PointedAt
    {
        public override object? With(object? value, Func<object?, object?> change)
        {
            var changed = (IDictionary)Activator.CreateInstance(typeof(Dictionary<,>).MakeGenericType(typeof(string), EntryType))!;
            foreach (DictionaryEntry entry in (IDictionary?)value ?? changed)
                changed.Add(entry.Key, entry.Value);
            if (Below is null)
                changed.Remove(Name);
            else
                changed[Name] = Below.With(changed.Contains(Name) ? changed[Name] : null, change);
            return changed;
        }
    }

    /// <summary>Behind the last item of a list.</summary>
    public sealed record AtEnd(Type ItemType) : PointedAt
    {
        public override object? With(object? value, Func<object?, object?> change)
        {
            var changed = CopyOf(value, ItemType, more: 1);
            changed.SetValue(change(null), changed.Length - 1);
            return changed;
        }
    }

    /// <summary>Items that go.</summary>
    public sealed record Out(Type ItemType, IReadOnlySet<int> Items) : PointedAt
    {
        public override object? With(object? value, Func<object?, object?> change)
        {
            var left = ((IEnumerable)value!).Cast<object>().Where((_, index) => !Items.Contains(index)).ToArray();
            var changed = Array.CreateInstance(ItemType, left.Length);
            Array.Copy(left, changed, left.Length);
            return changed;
        }
    }

    private static Array CopyOf(object? list, Type itemType, int more)
    {
        var items = (ICollection?)list;
        var copy = Array.CreateInstance(itemType, (items?.Count ?? 0) + more);
        items?.CopyTo(copy, 0);
        return copy;
    }
}
