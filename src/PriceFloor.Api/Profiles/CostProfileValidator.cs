using FluentValidation;
using FluentValidation.Results;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Profiles;

/// <summary>The rules between the fields of a cost profile, and the model's own: hours to work in, tax that leaves something.</summary>
public sealed class CostProfileValidator : AbstractValidator<CostProfile>
{
    public CostProfileValidator()
    {
        RuleFor(profile => profile.Currency).Must(code => code is null || Currency.Find(code) is not null).WithErrorCode("unknown-currency")
            .WithMessage("currency must be an ISO 4217 code of money that is spent, in capitals, such as USD.");
        RuleForEach(profile => profile.Expenses).SetValidator(new RecurringValidator<Expense>());
        RuleForEach(profile => profile.Household).SetValidator(new RecurringValidator<HouseholdLine>());
        RuleForEach(profile => profile.OtherIncome).SetValidator(new RecurringValidator<OtherIncome>());
        RuleForEach(profile => profile.Equipment).SetValidator(new EquipmentValidator());
        RuleFor(profile => profile.Materials).Custom((materials, context) => Unique(context, "materials", "material", [.. materials.Select(line => line.Material)]));
        RuleFor(profile => profile.Limits).Custom((limits, context) => Unique(context, "limits", "name", [.. limits.Select(line => line.Name)]));
        RuleFor(profile => profile.Tax).SetValidator(new TaxRulesValidator());
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
            foreach (var fault in StudioYear.CalendarFaults(profile))
                context.Add(fault);
        if (context.IsSound("/tax") && TaxRulesValidator.AreInOrder(profile.Tax))
            foreach (var fault in Tax.Of(profile.Tax).Faults)
                context.Add(fault);
    }

    private static void Unique(ValidationContext<CostProfile> context, string list, string field, IReadOnlyList<string> names)
    {
        foreach (var (index, name) in names.Index())
            if (name is not null && names.Take(index).Contains(name))
                context.AddFailure(new ValidationFailure($"{list}[{index}].{field}", $"\"{name}\" stands in the list already; leave one out or give it another name.") { ErrorCode = "duplicate" });
    }
}

/// <summary><c>times</c> goes with <c>per</c> "time" and with nothing else.</summary>
public sealed class RecurringValidator<T> : AbstractValidator<T> where T : IRecurring
{
    public RecurringValidator()
    {
        RuleFor(line => line.Times).NotNull().When(line => line.Per == Per.Time).WithErrorCode("required").WithMessage("With per \"time\", times says how many times a year.");
        RuleFor(line => line.Times).Null().When(line => line.Per != Per.Time).WithErrorCode("unexpected").WithMessage("times is only for per \"time\"; leave it out or change per.");
    }
}

/// <summary>Each method of depreciation needs its own figure.</summary>
public sealed class EquipmentValidator : AbstractValidator<Equipment>
{
    public EquipmentValidator()
    {
        RuleFor(thing => thing.Salvage).Must((thing, salvage) => salvage <= thing.Cost).WithErrorCode("out-of-range").WithMessage("salvage can be at most cost.");
        RuleFor(thing => thing.Depreciation).Custom((rule, context) =>
        {
            if (rule is null)
                return;
            Needs(context, rule.Method == DepreciationMethod.StraightLine, rule.LifeYears is not null, "lifeYears", "straight-line");
            Needs(context, rule.Method == DepreciationMethod.DecliningBalance, rule.Rate is not null, "rate", "declining-balance");
            Needs(context, rule.Method == DepreciationMethod.Percentages, rule.Percentages is { Count: > 0 }, "percentages", "percentages");
            if (rule.LifeYears * 12 % 1 is not (null or 0))
                Add(context, "lifeYears", "out-of-range", "lifeYears must be whole months: twelve times it is a whole number, such as 7.5.");
            if (rule.Percentages?.Sum() > 1)
                Add(context, "percentages", "out-of-range", "percentages are fractions that add up to at most 1, such as 0.2, 0.32, 0.192.");
        });
    }

    private static void Needs(ValidationContext<Equipment> context, bool isMethod, bool isGiven, string field, string method)
    {
        if (isMethod && !isGiven)
            Add(context, field, "required", $"The method {method} needs {field}.");
        if (!isMethod && isGiven)
            Add(context, field, "unexpected", $"{field} is only for the method {method}; leave it out or change the method.");
    }

    private static void Add(ValidationContext<Equipment> context, string field, string code, string detail) => context.Add("depreciation/" + field, code, detail);
}

/// <summary>Each kind of tax rules needs its own figures; bands rise and only the last is open.</summary>
public sealed class TaxRulesValidator : AbstractValidator<TaxRules>
{
    public TaxRulesValidator()
    {
        RuleFor(tax => tax.Rate).NotNull().When(tax => tax.Kind == TaxKind.Flat).WithErrorCode("required").WithMessage("A flat tax needs its rate.");
        RuleFor(tax => tax.Rate).Null().When(tax => tax.Kind != TaxKind.Flat).WithErrorCode("unexpected").WithMessage("rate is only for kind \"flat\"; leave it out or change kind.");
        RuleFor(tax => tax.Levies).NotEmpty().When(tax => tax.Kind == TaxKind.Levies).WithErrorCode("required").WithMessage("Tax by levies needs at least one levy.");
        RuleFor(tax => tax.Levies).Empty().When(tax => tax.Kind != TaxKind.Levies).WithErrorCode("unexpected").WithMessage("levies are only for kind \"levies\"; leave them out or change kind.");
        RuleForEach(tax => tax.Levies).Custom((levy, context) =>
        {
            foreach (var fault in BandFaults(levy))
                context.AddFailure(new ValidationFailure($"{context.PropertyPath}.{fault.Pointer}", fault.Detail) { ErrorCode = fault.Code });
        });
    }

    public static bool AreInOrder(TaxRules tax) => tax.Levies.All(levy => !BandFaults(levy).Any()) && (tax.Kind != TaxKind.Flat || tax.Rate is not null);

    private static IEnumerable<Fault> BandFaults(Levy levy)
    {
        var bands = levy.Bands ?? [];
        if (bands.Count == 0)
            yield return new("bands", "required", "A levy needs at least one band; a single rate is one band without upTo.");
        for (var i = 0; i < bands.Count; i++)
        {
            if (bands[i].UpTo is null && i < bands.Count - 1)
                yield return new($"bands[{i}].upTo", "required", "Only the last band has no upTo; say where this one ends.");
            if (bands[i].UpTo is not null && i == bands.Count - 1)
                yield return new($"bands[{i}].upTo", "unexpected", "The last band has no upTo, so that every profit has a rate; leave it out or add a last band.");
            if (i > 0 && bands[i].UpTo <= bands[i - 1].UpTo)
                yield return new($"bands[{i}].upTo", "out-of-order", "Bands go from low to high: this upTo must be above the one before.");
        }
    }
}
