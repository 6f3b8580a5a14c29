using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;

namespace PriceFloor.Api.Differences;

/// <summary>The values that fields have when they are left out.</summary>
internal static class UsualValues
{
    private static readonly ConcurrentDictionary<Type, object> s_untouched = new();

    /// <summary>Whether a field's value is the one that it has when it is left out.</summary>
    public static bool Has(PropertyInfo property, object value) => value is ICollection { Count: 0 }
        || value.Equals(property.GetValue(s_untouched.GetOrAdd(property.DeclaringType!, type => Activator.CreateInstance(type)!)));
}
