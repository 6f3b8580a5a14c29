using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The prices a channel allows: whole steps plus an ending, above zero. Steps of 1.00 ending in 0.95: 0.95, 1.95, 2.95 ...</summary>
public sealed record PriceGrid(decimal Step, decimal Ending)
{
    public static PriceGrid Of(Channel channel) =>
        new(channel.PriceStep ?? Currency.Of(channel.Currency).MinorUnit, channel.PriceEnding);

    public bool Allows(decimal price) => price > 0 && price >= Ending && (price - Ending) % Step == 0;

    /// <summary>The allowed price one step lower, or null if there is none.</summary>
    public decimal? Below(decimal price) => Allows(price - Step) ? price - Step : null;

    /// <summary>The highest allowed price that is not above another; null if there is none.</summary>
    public decimal? Last(decimal most) =>
        Rounding.Down((most - Ending) / Step, 0) * Step + Ending is var price && Allows(price) ? price : null;

    /// <summary>
    /// The smallest allowed price that is enough, or null if it would pass 10^12.
    /// </summary>
    /// <param name="near">About where it lies.</param>
    /// <param name="isEnough">Holds for every price from some point on.</param>
    public decimal? First(decimal near, Func<decimal, bool> isEnough)
    {
        var lowest = Ending > 0 ? 0 : 1;
        var step = decimal.Max(lowest, Rounding.Down((near - Ending) / Step, 0));
        while (step > lowest && isEnough((step - 1) * Step + Ending))
            step--;
        while (step * Step + Ending <= Limits.HighestPrice)
        {
            var price = step * Step + Ending;
            if (isEnough(price))
                return price;
            step++;
        }

        return null;
    }
}
