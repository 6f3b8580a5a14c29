using FluentValidation;
using FluentValidation.Results;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Profiles;

/// <summary>The rules between the fields of a cost profile, and the model's own: hours to work in, tax that leaves something.</summary>
public sealed class CostProfileValidator : AbstractValidator<CostProfile>
{
    public CostProfileValidator()
    {
        RuleFor(profile => profile).Custom((profile, context) => context.AddAll(ProfileRules.Faults(profile)));
        RuleFor(profile => profile).Custom(AskTheModel);
    }

    /// <summary>Only a profile without any other fault can be asked for its whole year.</summary>
    public override ValidationResult Validate(ValidationContext<CostProfile> context)
    {
        var result = base.Validate(context);
        if (result.IsValid && context.IsSound(""))
            foreach (var fault in StudioYear.Of(context.InstanceToValidate, new DateOnly(2000, 1, 1)).Faults)
                result.Errors.Add(new ValidationFailure(fault.Pointer.TrimStart('/'), fault.Detail) { ErrorCode = fault.Code });
        return result;
    }

    private static void AskTheModel(CostProfile profile, ValidationContext<CostProfile> context)
    {
        if (context.IsSound("/calendar", "/otherIncome", "/helpers"))
            context.AddAll(StudioYear.CalendarFaults(profile));
        if (context.IsSound("/tax") && ProfileRules.AreInOrder(profile.Tax))
            context.AddAll(Tax.Of(profile.Tax).Faults);
    }
}
