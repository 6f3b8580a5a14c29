namespace PriceFloor.Evidence.Lines;

/// <summary>Equal names are one object and have one number, so a million lines of 500 designs hold 500 names. For one caller at a time.</summary>
public sealed class NamePool
{
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> _bySpan;
    private readonly List<string> _names = [];

    public NamePool() => _bySpan = _numbers.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>How many names there are; their numbers are 0 to one less.</summary>
    public int Count => _names.Count;

    /// <summary>The name of a number.</summary>
    public string this[int number] => _names[number];

    /// <summary>The one text that equals it.</summary>
    public string Of(ReadOnlySpan<char> name) => _names[NumberOf(name)];

    /// <summary>The number of the name, which it keeps.</summary>
    public int NumberOf(ReadOnlySpan<char> name)
    {
        if (_bySpan.TryGetValue(name, out var number))
            return number;
        var text = name.ToString();
        _numbers.Add(text, _names.Count);
        _names.Add(text);
        return _names.Count - 1;
    }
}
