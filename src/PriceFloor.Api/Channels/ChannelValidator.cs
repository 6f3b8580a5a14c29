using FluentValidation;
using PriceFloor.Api.Http;
using PriceFloor.Pricing;

namespace PriceFloor.Api.Channels;

/// <summary>The rules between the fields of a channel, and the model's own: what is kept must rise with every price.</summary>
public sealed class ChannelValidator : AbstractValidator<Channel>
{
    public ChannelValidator()
    {
        RuleFor(channel => channel.Currency).Must(code => code is null || Currency.Find(code) is not null).WithErrorCode("unknown-currency")
            .WithMessage("currency must be an ISO 4217 code of money that is spent, in capitals, such as USD.");
        RuleForEach(channel => channel.Fees).ChildRules(fee => fee.RuleFor(one => one.Maximum).Must((one, most) => most is null || most >= (one.Minimum ?? 0))
            .WithErrorCode("out-of-order").WithMessage("maximum must be at least minimum."));
        RuleFor(channel => channel).Custom(GridFaults);
        RuleFor(channel => channel).Custom((channel, context) =>
        {
            if (context.IsSound("") && Currency.Find(channel.Currency) is not null && channel.PriceStep is not 0)
                foreach (var fault in SellingTerms.Of(channel).Faults)
                    context.Add(fault);
        });
    }

    private static void GridFaults(Channel channel, ValidationContext<Channel> context)
    {
        if (channel.PriceStep is null && channel.PriceEnding != 0)
            context.Add("priceEnding", "unexpected", "priceEnding needs priceStep: the step between allowed prices.");
        if (channel.PriceStep is { } step && channel.PriceEnding >= step)
            context.Add("priceEnding", "out-of-range", "priceEnding must be below priceStep, such as a step of 1.00 and an ending of 0.95.");
        if (channel.Currency is null || Currency.Find(channel.Currency) is not { } currency)
            return;
        if (channel.PriceStep is { } fine && NumberText.TooFine(fine, "priceStep", currency) is { } tooFine)
            context.Add("priceStep", "too-many-decimals", tooFine);
        if (NumberText.TooFine(channel.PriceEnding, "priceEnding", currency) is { } ending)
            context.Add("priceEnding", "too-many-decimals", ending);
    }
}
