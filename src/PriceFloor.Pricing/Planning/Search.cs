using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>Looks for the first whole number from which on something holds.</summary>
internal static class Search
{
    /// <summary>The same as <see cref="FirstFrom"/>, quick if the number lies near a guess.</summary>
    /// <param name="guess">About where it lies, between the two.</param>
    /// <param name="least">The least.</param>
    /// <param name="most">Where to give up.</param>
    /// <param name="isEnough">Holds for every number from some point on.</param>
    public static decimal? FirstNear(decimal guess, decimal least, decimal most, Func<decimal, bool> isEnough)
    {
        var (low, step) = (guess, 1m);
        while (low > least && isEnough(low - 1))
        {
            low = decimal.Max(least, low - step);
            step *= 2;
        }

        return FirstFrom(low, most, isEnough);
    }

    /// <summary>
    /// The smallest whole number between the two that is enough, in as many steps as it has binary digits; null if none is. With 10, 1000 and
    /// "at least 37": 37.
    /// </summary>
    /// <param name="least">Where to begin.</param>
    /// <param name="most">Where to give up.</param>
    /// <param name="isEnough">Holds for every number from some point on.</param>
    public static decimal? FirstFrom(decimal least, decimal most, Func<decimal, bool> isEnough)
    {
        var (low, step) = (least, 1m);
        var high = low;
        while (high <= most && !isEnough(high))
        {
            low = high + 1;
            high = decimal.Min(high + step, high < most ? most : most + 1);
            step *= 2;
        }

        if (high > most)
            return null;
        while (low < high)
        {
            var middle = Rounding.Down((low + high) / 2, 0);
            if (isEnough(middle))
                high = middle;
            else
                low = middle + 1;
        }

        return high;
    }
}
