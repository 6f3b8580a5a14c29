using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Plans;

/// <summary>What if: the months of a plan, stored or not. Nothing is stored.</summary>
public sealed record PlanMonthsRequest
{
    /// <summary>The plan or the key of a stored one. An inline plan needs no profile of its own if profile is given.</summary>
    public required KeyOr<Plan> Plan { get; init; }

    /// <summary>The cost profile or the key of a stored one; the plan's own if absent.</summary>
    public KeyOr<CostProfile>? Profile { get; init; }
}

/// <summary>Inline documents follow the rules of stored ones.</summary>
public sealed class PlanMonthsRequestValidator : AbstractValidator<PlanMonthsRequest>
{
    public PlanMonthsRequestValidator(IValidator<Plan> plan, IValidator<CostProfile> profile)
    {
        RuleFor(request => request.Profile).NotNull().When(request => request.Plan is { Key: null, Document: not { Profile: not null } })
            .WithErrorCode("required").WithMessage("Give a profile, inline or by key; the inline plan names none.");
        RuleFor(request => request.Plan).Custom((given, context) => Inline(given, plan, "plan", context));
        RuleFor(request => request.Profile).Custom((given, context) => Inline(given, profile, "profile", context));
    }

    private static void Inline<T>(KeyOr<T>? given, IValidator<T> validator, string at, ValidationContext<PlanMonthsRequest> context) where T : class
    {
        if (given?.Document is null)
            return;
        foreach (var fault in Rules.Below(validator, given.Document, at, context))
            context.Add(fault, certain: true);
    }
}

/// <summary>The months of a plan.</summary>
public sealed record PlanMonthsQuery(bool Lines, DateTimeOffset? AsOf, bool Workings) : IQuery<PlanMonthsQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
    [
        new("lines", "Whether each month has the pieces that each line sells in it.", "boolean", Default: "false"), QueryParameters.AsOf,
        QueryParameters.Workings,
    ];

    public static PlanMonthsQuery Read(QueryValues values) => new(values.Boolean("lines"), values.Time("asOf"), values.Boolean("workings"));
}
