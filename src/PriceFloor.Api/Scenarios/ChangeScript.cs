using PriceFloor.Api.Changes;

namespace PriceFloor.Api.Scenarios;

/// <summary>
/// A list of changes whose places are found in the documents of a request. What it makes of them is computed with each range at its likely value, and
/// can be computed again with other numbers without looking for the places again.
/// </summary>
public sealed class ChangeScript
{
    private readonly List<ChangeStep> _steps;
    private readonly ChangedDocuments _beforeRanges;
    private readonly int _firstRanged;

    private ChangeScript(List<ChangeStep> steps, List<RangedChange> ranges, ChangedDocuments likely)
    {
        (_steps, Ranges, Likely) = (steps, ranges, likely);
        _firstRanged = steps.FindIndex(step => step.Range is not null);
        _beforeRanges = steps.Take(int.Max(_firstRanged, 0)).Aggregate(ChangedDocuments.None, (before, step) => step.Apply(before, step.Number));
    }

    /// <summary>The changes that have a range, in order.</summary>
    public IReadOnlyList<RangedChange> Ranges { get; }

    /// <summary>The documents after all changes, each range at its likely value, unrounded.</summary>
    public ChangedDocuments Likely { get; }

    internal IReadOnlyList<ChangeStep> Steps => _steps;

    /// <summary>
    /// Finds the places of all changes and checks the documents after them; a fault's pointer is in the owner of the list
    /// (<c>/changes/3/at</c>). All faults at once.
    /// </summary>
    public static Outcome<ChangeScript> Of(IReadOnlyList<DocumentChange> changes, ChangeScope scope)
    {
        var (finder, faults) = (new ChangeFinder(scope), new List<Fault>());
        foreach (var (index, change) in changes.Index())
            faults.AddRange(finder.Add(index, change).Select(fault =>
                fault with { Pointer = FormattableString.Invariant($"/changes/{index}{fault.Pointer}") }));
        var script = new ChangeScript(finder.Steps, finder.Ranges, finder.After);
        faults.AddRange(ChangedDocumentFaults.Of(script, scope));
        return faults.Count > 0 ? faults : script;
    }

    /// <summary>
    /// The documents with other numbers in place of the ranges' likely values. Each changed number is held at its field's bounds. The documents are
    /// not checked: the model says which of them have no answer.
    /// </summary>
    /// <param name="numbers">For each of <see cref="Ranges"/> the factor, amount or value.</param>
    /// <param name="held">For each of them, set if its number was held at a bound; may be empty.</param>
    /// <exception cref="OverflowException">A number passes what <c>decimal</c> can hold.</exception>
    public ChangedDocuments With(ReadOnlySpan<decimal> numbers, Span<bool> held = default)
    {
        if (_firstRanged < 0)
            return Likely;
        var (documents, bounds) = (_beforeRanges, new Held());
        for (var i = _firstRanged; i < _steps.Count; i++)
        {
            var step = _steps[i];
            bounds.IsHeld = false;
            documents = step.Range is { } range ? step.Apply(documents, numbers[range], bounds) : step.Apply(documents, step.Number);
            if (step.Range is { } place && place < held.Length)
                held[place] |= bounds.IsHeld;
        }

        return documents;
    }
}
