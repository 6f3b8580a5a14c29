using System.Globalization;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Documents;

/// <summary>The rules between the fields of a channel: fees with room between their bounds, a grid of prices that the currency has.</summary>
public static class ChannelRules
{
    /// <summary>Every rule that the document breaks. Missing required fields are reported elsewhere.</summary>
    public static IEnumerable<Fault> Faults(Channel channel) =>
    [
        .. CurrencyRule.Faults(channel.Currency),
        .. channel.Fees.SelectMany(FeeFaults),
        .. GridFaults(channel),
    ];

    /// <summary>What to say of a price with more decimals than its currency has; null if it has no more.</summary>
    public static string? TooFine(decimal price, string name, Currency currency) => Rounding.HasAtMost(price, currency.Decimals) ? null
        : string.Create(CultureInfo.InvariantCulture, $"{name} has more decimals than {currency.Code} has: at most {currency.Decimals}.");

    private static Fault[] FeeFaults(Fee fee, int index) => fee.Maximum < (fee.Minimum ?? 0)
        ? [new(FormattableString.Invariant($"/fees/{index}/maximum"), FaultCodes.OutOfOrder, "maximum must be at least minimum.")]
        : [];

    private static IEnumerable<Fault> GridFaults(Channel channel)
    {
        if (channel.PriceStep is null && channel.PriceEnding != 0)
            yield return new("/priceEnding", FaultCodes.Unexpected, "priceEnding needs priceStep: the step between allowed prices.");
        if (channel.PriceStep is > 0 and var step && channel.PriceEnding >= step)
            yield return new("/priceEnding", FaultCodes.OutOfRange,
                "priceEnding must be below priceStep, such as a step of 1.00 and an ending of 0.95.");
        if (channel.Currency is null || Currency.Find(channel.Currency) is not { } currency)
            yield break;
        if (channel.PriceStep is { } fine && TooFine(fine, "priceStep", currency) is { } tooFine)
            yield return new("/priceStep", FaultCodes.TooManyDecimals, tooFine);
        if (TooFine(channel.PriceEnding, "priceEnding", currency) is { } ending)
            yield return new("/priceEnding", FaultCodes.TooManyDecimals, ending);
        if (channel.MinimumOrder is { } order && TooFine(order, "minimumOrder", currency) is { } tooFineAnOrder)
            yield return new("/minimumOrder", FaultCodes.TooManyDecimals, tooFineAnOrder);
    }
}
