using FluentValidation;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.Channels;

/// <summary>The rules between the fields of a channel, and the model's own: proceeds must rise with every price.</summary>
public sealed class ChannelValidator : AbstractValidator<Channel>
{
    public ChannelValidator()
    {
        RuleFor(channel => channel).Custom((channel, context) => context.AddAll(ChannelRules.Faults(channel)));
        RuleFor(channel => channel).Custom(AskTheModel);
    }

    /// <summary>Checks the rates even if other fields have faults; only a channel without faults can be asked for all its terms.</summary>
    private static void AskTheModel(Channel channel, ValidationContext<Channel> context)
    {
        var isWhole = context.IsSound("") && Currency.Find(channel.Currency) is not null && channel.PriceStep is not 0;
        if (isWhole || RatesAreSound(channel, context))
            foreach (var fault in isWhole ? SellingTerms.Of(channel).Faults : SellingTerms.RateFaults(channel))
                context.Add(fault, certain: true);
    }

    private static bool RatesAreSound(Channel channel, ValidationContext<Channel> context) =>
        context.IsSound("/shopShare", "/salesTax", "/shipping/charged", "/piecesPerOrder", "/returns")
        && channel.Fees.Index().Select(fee => $"/fees/{fee.Index}")
            .All(fee => context.IsSound(fee + "/rate", fee + "/fixed", fee + "/of", fee + "/minimum", fee + "/maximum"));
}
