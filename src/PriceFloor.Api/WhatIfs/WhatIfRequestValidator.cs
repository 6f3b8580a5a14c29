using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.WhatIfs;

/// <summary>The rules between the fields of a what-if. The changes are looked at where they lead.</summary>
public sealed class WhatIfRequestValidator : AbstractValidator<WhatIfRequest>
{
    public WhatIfRequestValidator() => RuleFor(request => request).Custom((request, context) =>
    {
        if (request.Plan is null)
            foreach (var field in OfAPlan(request))
                context.Add(new Fault("/plan", FaultCodes.Required, $"{field} is of a plan; name it."));
        foreach (var fault in PhaseFaults(request.Phases ?? []))
            if (context.IsSound(fault.Pointer))
                context.Add(fault);
    });

    private static IEnumerable<string> OfAPlan(WhatIfRequest request)
    {
        if (request.From is not null)
            yield return "from";
        if (request.Notice is not null)
            yield return "notice";
        if (request.Phases is not null)
            yield return "phases";
        if (request.Remedies is not null)
            yield return "remedies";
    }

    private static IEnumerable<Fault> PhaseFaults(IReadOnlyList<PricePhaseRequest> phases)
    {
        for (var i = 1; i < phases.Count; i++)
        {
            if (phases[i] is not { } phase || phases[i - 1] is not { } before)
                continue;
            if (phase.On <= before.On)
                yield return new Fault(FormattableString.Invariant($"/phases/{i}/on"), FaultCodes.OutOfOrder,
                    "Each phase begins after the one before it.");
            if (phase.Share <= before.Share)
                yield return new Fault(FormattableString.Invariant($"/phases/{i}/share"), FaultCodes.OutOfOrder,
                    "Each phase has a larger share than the one before it.");
        }

        if (phases.Count > 0 && phases[^1] is { Share: not 1 })
            yield return new Fault(FormattableString.Invariant($"/phases/{phases.Count - 1}/share"), FaultCodes.NotWhole,
                "The last phase has the share 1: the whole rise.");
    }
}
