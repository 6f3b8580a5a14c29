using System.ComponentModel.DataAnnotations;
using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.FloorPrices;

/// <summary>What if: a floor from stored documents, inline ones, or some of each. Nothing is stored.</summary>
public sealed record FloorPriceRequest
{
    /// <summary>The cost profile or the key of a stored one; the design's own if absent.</summary>
    public KeyOr<CostProfile>? Profile { get; init; }

    /// <summary>The design or the key of a stored one. An inline design needs no profile of its own if profile is given.</summary>
    public required KeyOr<Design> Design { get; init; }

    /// <summary>Channels or keys of stored ones; none if absent.</summary>
    [MaxLength(100)]
    public IReadOnlyList<KeyOr<Channel>> Channels { get; init; } = [];
}

/// <summary>A floor, if given with another profile than the design's own.</summary>
public sealed record FloorPriceQuery(string? Profile, DateTimeOffset? AsOf, bool Workings) : IQuery<FloorPriceQuery>
{
    public static IReadOnlyList<QueryParameter> Parameters =>
        [new("profile", "Key of another profile to try.", "string", Example: "main"), QueryParameters.AsOf, QueryParameters.Workings];

    public static FloorPriceQuery Read(QueryValues values) => new(values.Text("profile"), values.Time("asOf"), values.Boolean("workings"));
}

/// <summary>Inline documents follow the rules of stored ones.</summary>
public sealed class FloorPriceRequestValidator : AbstractValidator<FloorPriceRequest>
{
    public FloorPriceRequestValidator(IValidator<CostProfile> profile, IValidator<Design> design, IValidator<Channel> channel)
    {
        RuleFor(request => request.Profile).NotNull().When(request => request.Design is { Key: null, Document: not { Profile: not null } })
            .WithErrorCode("required").WithMessage("Give a profile, inline or by key; the inline design names none.");
        RuleFor(request => request.Profile).Custom((given, context) => Inline(given, profile, "profile", context));
        RuleFor(request => request.Design).Custom((given, context) => Inline(given, design, "design", context));
        RuleFor(request => request.Channels).Custom((given, context) =>
        {
            foreach (var (index, one) in given.Index())
                Inline(one, channel, $"channels/{index}", context);
        });
    }

    private static void Inline<T>(KeyOr<T>? given, IValidator<T> validator, string at, ValidationContext<FloorPriceRequest> context) where T : class
    {
        if (given?.Document is null)
            return;
        foreach (var fault in Rules.Below(validator, given.Document, at, context))
            context.Add(fault, certain: true);
    }
}
