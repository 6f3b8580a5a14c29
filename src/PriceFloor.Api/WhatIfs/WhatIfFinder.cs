using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Changes;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.Plans;
using PriceFloor.Api.Scenarios;
using PriceFloor.Storage;

namespace PriceFloor.Api.WhatIfs;

/// <summary>Finds what the changes of all scenarios lead to; all faults at once, each at its change.</summary>
internal sealed class WhatIfFinder(ChangeScope scope, IReadOnlyDictionary<string, Stored<Scenario>> stored)
{
    private readonly List<Fault> _faults = [];
    private readonly HashSet<DocumentName> _changed = [];

    public Outcome<WhatIf> Of(WhatIfRequest request)
    {
        var scenarios = request.Scenarios.Select((one, i) => (Name: NameOf(one), Changes: ChangesOf(one, i), IsStored: one.Key is not null)).ToList();
        if (_faults.Count > 0)
            return _faults;
        if (scenarios.Sum(one => one.Changes.Count) > DocumentChangeRules.MostChanges)
            return RequestFault.Invalid(Place.Body.Error("scenarios", InputCodes.TooMany,
                FormattableString.Invariant($"All scenarios together have at most {DocumentChangeRules.MostChanges} changes.")));
        if (In(scope.Catalogue, null) is not { } now)
            return _faults;
        var found = scenarios.Select((one, i) => Scenario(one.Name, one.Changes, fault => Placed(fault, i, one.IsStored))).ToList();
        var combined = request.Combined && _faults.Count == 0 ? Combined(scenarios.ConvertAll(one => one.Changes)) : null;
        return _faults.Count > 0 ? _faults : new WhatIf
        {
            Profile = scope.Profile,
            Request = request,
            Now = now,
            Scenarios = [.. found.OfType<WhatIfScenario>()],
            Combined = combined,
            ChangedDocuments = scope.BasisOf(_changed),
            StoredScenarios = [.. request.Scenarios.Select(one => one.Key).OfType<string>().Distinct().Select(key => stored[key].Basis)],
        };
    }

    private string? NameOf(KeyOr<ScenarioRequest> one) =>
        one.Key is { } key ? stored.GetValueOrDefault(key)?.Document.Name ?? key : one.Document!.Name;

    private IReadOnlyList<DocumentChange> ChangesOf(KeyOr<ScenarioRequest> one, int index)
    {
        if (one.Key is not { } key)
            return one.Document!.Changes;
        if (stored.TryGetValue(key, out var scenario))
            return scenario.Document.Changes;
        _faults.Add(RequestFault.Unknown(new InputError
        {
            Pointer = FormattableString.Invariant($"#/scenarios/{index}"),
            Code = InputCodes.UnknownScenario,
            Detail = $"There is no scenario \"{key}\" for the profile \"{scope.Profile.Key}\"; case counts.",
        }));
        return [];
    }

    private WhatIfScenario? Scenario(string? name, IReadOnlyList<DocumentChange> changes, Func<Fault, InputError> place)
    {
        var script = ChangeScript.Of(changes, scope);
        if (script.Found is not { } found)
        {
            _faults.AddRange(script.Faults.Select(fault => RequestFault.Invalid(place(fault))));
            return null;
        }

        _changed.UnionWith(found.Likely.All.Keys);
        var catalogue = found.Likely.All.Count == 0 ? scope.Catalogue : scope.Catalogue.Changed(found.Likely.All);
        return In(catalogue, name);
    }

    /// <summary>The year and the plan that follow from documents; null if one of them has no answer.</summary>
    private WhatIfScenario? In(WholeCatalogue catalogue, string? name)
    {
        var year = catalogue.Year(catalogue.Profile(scope.Profile.Key)!);
        var plan = year.Found is not null && scope.Plan is { } asked
            ? PlanInQuestion.Of(catalogue, catalogue.Plan(asked.Key)!, anyDecimals: true)
            : null;
        _faults.AddRange(year.Faults.Concat(plan?.Faults ?? []));
        return _faults.Count > 0 ? null : new WhatIfScenario(name, catalogue, year.Value, plan?.Value);
    }

    private WhatIfScenario? Combined(IReadOnlyList<IReadOnlyList<DocumentChange>> scenarios) => Scenario(null, [.. scenarios.SelectMany(one => one)],
        fault => new InputError { Pointer = "#/combined", Code = fault.Code, Detail = $"With all changes together: {fault.Detail}" });

    /// <summary>A fault at its change; the changes of a stored scenario are not in the request.</summary>
    private static InputError Placed(Fault fault, int scenario, bool isStored) => new()
    {
        Pointer = FormattableString.Invariant($"#/scenarios/{scenario}{(isStored ? "" : fault.Pointer)}"),
        Code = fault.Code,
        Detail = isStored ? $"{fault.Pointer}: {fault.Detail}" : fault.Detail,
    };
}
