using System.Text.Json;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Changes;

/// <summary>The rules between the fields of a change, which hold whatever document it is applied to.</summary>
public static class DocumentChangeRules
{
    /// <summary>The most changes that a request or a stored scenario has.</summary>
    public const int MostChanges = 200;

    /// <summary>Every rule that a list of changes breaks, with pointers from the owner of the list.</summary>
    public static IEnumerable<Fault> Faults(IReadOnlyList<DocumentChange>? changes) => (changes ?? []).Index()
        .SelectMany(change => change.Item is null ? [] : Faults(change.Item)
            .Select(fault => fault with { Pointer = FormattableString.Invariant($"/changes/{change.Index}{fault.Pointer}") }));

    /// <summary>Every rule that a change breaks.</summary>
    public static IEnumerable<Fault> Faults(DocumentChange change)
    {
        var ways = new[] { change.To is not null, change.By is not null, change.Plus is not null, change.Remove == true, change.Merge is not null };
        if (ways.Count(given => given) != 1)
            return [new Fault("", FaultCodes.ExactlyOne, "Say what happens in exactly one way: to, by, plus, remove (true) or merge.")];
        return [.. PlaceFaults(change), .. ChangeRange.Faults(change)];
    }

    private static IEnumerable<Fault> PlaceFaults(DocumentChange change)
    {
        if (change.Merge is not null && change.At is not null)
            yield return new Fault("/at", FaultCodes.Unexpected, "A merge is for the whole document; leave at out.");
        if (change.Merge is { Value.ValueKind: not JsonValueKind.Object })
            yield return new Fault("/merge", InputCodes.WrongType, "merge must be an object with the properties to change.");
        if (change.Merge is null && change.At is null)
            yield return new Fault("/at", FaultCodes.Required, "at is missing: a pointer to the place, such as /calendar/weeksPerYear.");
        if (change.At is { } at && DocumentPointer.Find(at) is null)
            yield return new Fault("/at", FaultCodes.LeadsNowhere,
                "at is no JSON Pointer: it begins with / and writes a slash in a name as ~1 and a tilde as ~0.");
    }
}
