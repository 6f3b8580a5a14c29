using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Designs;

/// <summary>The rules between the fields of a design.</summary>
public sealed class DesignValidator : AbstractValidator<Design>
{
    public DesignValidator() => RuleFor(design => design).Custom((design, context) => context.AddAll(DesignRules.Faults(design)));
}
