using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Quotes;

/// <summary>A quote that is not stored: its document, in which profile and channel may be documents too. Nothing is stored.</summary>
public sealed record QuoteFiguresRequest : QuoteTerms
{
    /// <summary>The cost profile that the work must carry, or the key of a stored one.</summary>
    public required KeyOr<CostProfile> Profile { get; init; }

    /// <summary>The channel that it is sold on, or the key of a stored one.</summary>
    public required KeyOr<Channel> Channel { get; init; }
}

/// <summary>Inline documents follow the rules of stored ones.</summary>
public sealed class QuoteFiguresRequestValidator : AbstractValidator<QuoteFiguresRequest>
{
    public QuoteFiguresRequestValidator(IValidator<CostProfile> profile, IValidator<Channel> channel)
    {
        RuleFor(request => request).Custom((request, context) => context.AddAll(QuoteRules.Faults(request, request.Profile?.Key)));
        RuleFor(request => request.Profile).Custom((given, context) => Inline(given, profile, "profile", context));
        RuleFor(request => request.Channel).Custom((given, context) => Inline(given, channel, "channel", context));
    }

    private static void Inline<T>(KeyOr<T>? given, IValidator<T> validator, string at, ValidationContext<QuoteFiguresRequest> context) where T : class
    {
        if (given?.Document is null)
            return;
        foreach (var fault in Rules.Below(validator, given.Document, at, context))
            context.Add(fault, certain: true);
    }
}
