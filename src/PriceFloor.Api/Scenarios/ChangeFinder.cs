using System.Globalization;
using PriceFloor.Api.Changes;
using PriceFloor.Storage;

namespace PriceFloor.Api.Scenarios;

/// <summary>Finds the places of changes one after the other, each in the documents as the ones before it leave them.</summary>
internal sealed class ChangeFinder(ChangeScope scope)
{
    public List<ChangeStep> Steps { get; } = [];

    public List<RangedChange> Ranges { get; } = [];

    /// <summary>The documents after all changes that have been added.</summary>
    public ChangedDocuments After { get; private set; } = ChangedDocuments.None;

    /// <summary>Adds a change and applies it; a change with a fault changes nothing. Pointers are in the change.</summary>
    public IReadOnlyList<Fault> Add(int index, DocumentChange change)
    {
        if (DocumentChangeRules.Faults(change).ToList() is { Count: > 0 } broken)
            return broken;
        var named = scope.Named(change.Of);
        if (named.Found is not { } documents)
            return named.Faults;
        var found = TargetsIn(documents, change);
        if (found.Found is not { } targets)
            return found.Faults;
        var (range, fault) = RangeOf(index, change, targets, isMany: documents.Count > 1);
        if (fault is not null)
            return [fault];
        try
        {
            var step = new ChangeStep(index, targets, range?.Likely ?? NumberOf(change), range is null ? null : Ranges.Count);
            After = step.Apply(After, step.Number);
            Steps.Add(step);
            if (range is not null)
                Ranges.Add(range);
            return [];
        }
        catch (OverflowException)
        {
            return [Fault.TooLarge];
        }
    }

    /// <summary>Of many documents, those that have the place are meant.</summary>
    private Outcome<List<ChangeTarget>> TargetsIn(IReadOnlyList<DocumentName> documents, DocumentChange change)
    {
        var (targets, faults) = (new List<ChangeTarget>(), (IReadOnlyList<Fault>)[]);
        foreach (var document in documents)
        {
            var stored = scope.Find(document);
            var start = stored ?? Activator.CreateInstance(ChangeScope.SchemaOf(document.Kind).Root.Type)!;
            var before = After.Find(document);
            var operation = ChangeOperation.Of(change, before ?? start, ChangeScope.SchemaOf(document.Kind), isNew: stored is null && before is null);
            if (operation.Found is { } found)
                targets.Add(new ChangeTarget(document, start, found));
            else
                faults = faults.Count == 0 ? operation.Faults : faults;
        }

        return targets.Count > 0 ? targets : faults.ToList();
    }

    private static decimal? NumberOf(DocumentChange change) => change.By?.Number ?? change.Plus?.Number;

    private static (RangedChange? Range, Fault? Fault) RangeOf(int index, DocumentChange change, List<ChangeTarget> targets, bool isMany)
    {
        if (ChangeRange.Of(change) is not { } range)
            return (null, null);
        var likely = range.Likely ?? ChangeRange.Neutral(change) ?? (isMany ? null : targets[0].Operation.Before);
        if (likely is not { } known)
            return (null, new Fault("/to", FaultCodes.Required,
                "likely is missing; under to it may be left out only for one number that is stored."));
        if (range.Low > known || known > range.High)
            return (null, new Fault("/to", FaultCodes.OutOfOrder,
                string.Create(CultureInfo.InvariantCulture, $"What is stored, {Rounding.Trim(known)}, is not between low and high; give likely.")));
        var kind = targets[0].Document.Kind;
        var of = change.Of.StartsWith(kind + ":", StringComparison.Ordinal) ? change.Of : $"{kind}:{change.Of}";
        return (new RangedChange(index, change, $"{of}#{change.At}", range.Low, known, range.High), null);
    }
}
