using FluentValidation;
using PriceFloor.Api.Http;

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
        RuleFor(channel => channel).Custom(AskTheModel);
    }

    /// <summary>The rates can be judged beside faults in all other fields; only a wholly sound channel can be asked for all its terms.</summary>
    private static void AskTheModel(Channel channel, ValidationContext<Channel> context)
    {
        var isWhole = context.IsSound("") && Currency.Find(channel.Currency) is not null && channel.PriceStep is not 0;
        if (isWhole || RatesAreSound(channel, context))
            foreach (var fault in isWhole ? SellingTerms.Of(channel).Faults : SellingTerms.RateFaults(channel))
                context.Add(fault, certain: true);
    }

    private static bool RatesAreSound(Channel channel, ValidationContext<Channel> context) =>
        context.IsSound("/shopShare", "/salesTax", "/shipping/charged", "/piecesPerOrder", "/returns")
        && channel.Fees.Index().Select(fee => $"/fees/{fee.Index}").All(fee => context.IsSound(fee + "/rate", fee + "/fixed", fee + "/of", fee + "/minimum", fee + "/maximum"));

    private static void GridFaults(Channel channel, ValidationContext<Channel> context)
    {
        if (channel.PriceStep is null && channel.PriceEnding != 0)
            context.Add("priceEnding", "unexpected", "priceEnding needs priceStep: the step between allowed prices.");
        if (context.IsSound("/priceStep") && channel.PriceStep is { } step && channel.PriceEnding >= step)
            context.Add("priceEnding", "out-of-range", "priceEnding must be below priceStep, such as a step of 1.00 and an ending of 0.95.");
        if (channel.Currency is null || Currency.Find(channel.Currency) is not { } currency)
            return;
        if (channel.PriceStep is { } fine && NumberText.TooFine(fine, "priceStep", currency) is { } tooFine)
            context.Add("priceStep", "too-many-decimals", tooFine);
        if (NumberText.TooFine(channel.PriceEnding, "priceEnding", currency) is { } ending)
            context.Add("priceEnding", "too-many-decimals", ending);
    }
}
