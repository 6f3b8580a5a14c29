using System.Collections;

namespace PriceFloor.Api.Http;

/// <summary>A long list of which each item is made whenever it is read, so that all of them are never held at once.</summary>
/// <param name="found">What it is made from.</param>
/// <param name="shown">Makes an item. It must not fail, and may be asked on several processors at once.</param>
public sealed class ShownAsRead<TFound, TShown>(IReadOnlyList<TFound> found, Func<TFound, TShown> shown) : IReadOnlyList<TShown>
{
    public int Count => found.Count;

    public TShown this[int index] => shown(found[index]);

    public IEnumerator<TShown> GetEnumerator() => found.Select(shown).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
