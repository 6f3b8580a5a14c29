using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Plans;

/// <summary>The rules between the fields of a plan.</summary>
public sealed class PlanValidator : AbstractValidator<Plan>
{
    public PlanValidator() => RuleFor(plan => plan).Custom((plan, context) =>
        context.AddAll(PlanRules.Faults(plan).Where(fault => context.IsSound(fault.Pointer))));
}
