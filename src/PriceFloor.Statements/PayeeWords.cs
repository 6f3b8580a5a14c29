namespace PriceFloor.Statements;

/// <summary>
/// Which words of the lines of a request say who was paid. A word that follows several different ones, such as the name of the town where many shops
/// are, says nothing about who, nor does one that begins very many, such as "card".
/// </summary>
internal sealed class PayeeWords
{
    /// <summary>After so many different words a word is general. Our own choice.</summary>
    private const int Many = 3;

    private readonly Dictionary<string, string[]> _words;
    private readonly Dictionary<string, HashSet<string>> _before = [];
    private readonly Dictionary<string, HashSet<string>> _payees = [];

    private readonly HashSet<string> _ofTheBank;

    public PayeeWords(IEnumerable<string> texts)
    {
        _words = texts.Distinct().ToDictionary(text => text, text => Words.PayeeWords(text).ToArray());
        foreach (var words in _words.Values)
            foreach (var (before, word) in words.Zip(words.Skip(1)))
                if (before != word)
                    SetOf(_before, word).Add(before);
        _ofTheBank = OfTheBank(_words.Values);
        foreach (var words in _words.Values)
            foreach (var word in Payee(words))
                SetOf(_payees, word).Add(string.Join(' ', Payee(words)));
    }

    /// <summary>The words of a text that may say who was paid, in order. The town of many shops is not among them.</summary>
    public IEnumerable<string> Of(string text) =>
        Payee(_words[text]).Where((word, place) => place == 0 ? !_ofTheBank.Contains(word) : !IsGeneral(word));

    /// <summary>Whether a word ends a text that has others: there it may be the place of two payees.</summary>
    public bool IsEnd(string word, string text) => _words[text] is { Length: > 1 } words && words[^1] == word;

    /// <summary>
    /// A part of a text without the general words at its end, or as it was if less of it would take the lines of another payee too.
    /// </summary>
    /// <param name="part">Whole words of texts.</param>
    public string Without(string part)
    {
        var words = Words.PayeeWords(part).ToList();
        var kept = Payee(words);
        if (kept.Count == words.Count || kept.Count == 0)
            return part;
        var end = Find(part, kept);
        var key = string.Join(' ', kept);
        return end > 0 && kept.Select(word => _payees.GetValueOrDefault(word)).MinBy(payees => payees?.Count ?? 0) is { } some
                && some.All(payee => payee == key || !$" {payee} ".Contains($" {key} ", StringComparison.Ordinal))
            ? part[..end]
            : part;
    }

    /// <summary>Words that begin a fifth of all texts or more, with different ones after them, such as "card".</summary>
    private static HashSet<string> OfTheBank(IEnumerable<string[]> texts)
    {
        var distinct = texts.Where(words => words.Length > 0).DistinctBy(words => string.Join(' ', words)).ToList();
        return [.. distinct.Where(words => words.Length > 1).GroupBy(words => words[0])
            .Where(alike => alike.Count() * 5 >= distinct.Count && alike.Select(words => words[1]).Distinct().Count() >= Many)
            .Select(alike => alike.Key)];
    }

    private List<string> Payee(IReadOnlyList<string> words)
    {
        var count = words.Count;
        while (count > 1 && IsGeneral(words[count - 1]))
            count--;
        return [.. words.Take(count)];
    }

    private bool IsGeneral(string word) => _before.TryGetValue(word, out var before) && before.Count >= Many;

    /// <summary>Where the last of some words ends in a text that begins with them.</summary>
    private static int Find(string text, List<string> words)
    {
        var at = 0;
        foreach (var word in words)
            if (text.IndexOf(word, at, StringComparison.OrdinalIgnoreCase) is >= 0 and var found)
                at = found + word.Length;
            else
                return -1;
        return at;
    }

    private static HashSet<string> SetOf(Dictionary<string, HashSet<string>> sets, string word)
    {
        if (!sets.TryGetValue(word, out var set))
            sets[word] = set = [];
        return set;
    }
}
