namespace PriceFloor.Evidence.Sheets;

/// <summary>Lines of one request that have the same ref: with the same content one counts, with other content none.</summary>
internal sealed class SameRefs<T> where T : class
{
    private readonly Dictionary<string, T> _first = new(StringComparer.Ordinal);
    private readonly HashSet<string> _differing = new(StringComparer.Ordinal);
    private readonly HashSet<T> _repeated = new(ReferenceEqualityComparer.Instance);

    /// <param name="lines">The lines.</param>
    /// <param name="refOf">The ref of a line; null if it has none.</param>
    /// <param name="isSame">Whether two lines say the same.</param>
    public SameRefs(IEnumerable<T> lines, Func<T, string?> refOf, Func<T, T, bool> isSame)
    {
        foreach (var line in lines)
            if (refOf(line) is { } own && !_first.TryAdd(own, line))
                if (isSame(_first[own], line))
                    _repeated.Add(line);
                else
                    _differing.Add(own);
    }

    /// <summary>Whether a line stands in the request already.</summary>
    public bool Repeats(T line) => _repeated.Contains(line);

    /// <summary>Whether lines of this ref say different things.</summary>
    public bool Differ(string? own) => own is not null && _differing.Contains(own);
}
