using PriceFloor.Api.Changes;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Scenarios;

namespace PriceFloor.Api.Sureness;

/// <summary>The ranges of a question, from its body or from a stored scenario.</summary>
internal static class GuessedChanges
{
    /// <summary>The changes at their places, 1 to 50 of them with a range and no two ranges of one place; all faults at once.</summary>
    public static Outcome<ChangeScript> Of(SurenessRequest request, ChangeScope scope, Stored<Scenario>? stored, LoggedRanges? logged)
    {
        if (request.Scenario is { } key && stored is null)
            return RequestFault.Unknown(Place.Body.Error("scenario", InputCodes.UnknownScenario,
                $"There is no scenario \"{key}\" for the profile \"{scope.Profile.Key}\"; case counts."));
        var whole = stored is not null ? "scenario" : logged is not null ? "ranges" : null;
        var script = ChangeScript.Of(logged?.Changes ?? request.Ranges?.List ?? stored!.Document.Changes, scope);
        if (script.Found is not { } found)
            return script.Faults.Select(fault => (Fault)RequestFault.Invalid(Placed(fault, whole))).ToList();
        if (found.Ranges.Count == 0)
            return RequestFault.Invalid(Place.Body.Error(whole ?? "ranges", FaultCodes.Required,
                "No change has a range; give low and high to at least one."));
        if (found.Ranges.Count > SurenessRequest.MostRanges)
            return RequestFault.Invalid(Place.Body.Error(whole ?? "ranges", InputCodes.TooMany,
                FormattableString.Invariant($"At most {SurenessRequest.MostRanges} ranges are drawn; leave out those that move least.")));
        var twice = found.Ranges.GroupBy(range => range.Name).SelectMany(same => same.Skip(1)).ToList();
        return twice.Count == 0 ? found : twice.Select(range => (Fault)RequestFault.Invalid(Placed(new Fault(
            FormattableString.Invariant($"/changes/{range.Index}"), FaultCodes.Duplicate, $"{range.Name} has a range already; leave one out."),
            whole))).ToList();
    }

    /// <param name="fault">The fault, with a pointer into the changes.</param>
    /// <param name="whole">The field that stands for all changes; null if the request has each.</param>
    private static InputError Placed(Fault fault, string? whole) => new()
    {
        Pointer = whole is not null ? $"#/{whole}" : $"#/ranges{fault.Pointer["/changes".Length..]}",
        Code = fault.Code,
        Detail = whole is not null ? $"{fault.Pointer}: {fault.Detail}" : fault.Detail,
    };
}
