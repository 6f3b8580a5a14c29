using System.Globalization;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>Figures as a maker says them.</summary>
internal static class RemedyWords
{
    /// <summary>Minutes, shares and hours: 40, not 40.00.</summary>
    public static string Plain(decimal value) => Rounding.Trim(value).ToString(CultureInfo.InvariantCulture);

    /// <summary>Money keeps its decimals and names its currency: 61.74 USD.</summary>
    public static string Amount(decimal value, Currency money) =>
        string.Create(CultureInfo.InvariantCulture, $"{Rounding.WithDecimals(value, money.Decimals)} {money.Code}");

    /// <summary>A rate: 40 %, not 0.4.</summary>
    public static string Percent(decimal share) => $"{Plain(share * 100)} %";

    /// <summary>
    /// Two shares as whole pieces of a hundred, or of as many as it takes to tell them apart: 96 of 100 instead of 88.
    /// </summary>
    /// <param name="before">The share today; to the nearest piece.</param>
    /// <param name="after">The share that is enough; rounded up.</param>
    public static (string Of, string Before, string After) Pieces(decimal before, decimal after)
    {
        for (var of = 100m; ; of *= 10)
        {
            var (now, enough) = (Rounding.Nearest(before * of, 0), Rounding.Up(after * of, 0));
            if ((now < enough && enough < of) || (now < of && after == 1) || of == 1_000_000)
                return (of.ToString("#,0", CultureInfo.InvariantCulture), now.ToString("#,0", CultureInfo.InvariantCulture),
                    enough.ToString("#,0", CultureInfo.InvariantCulture));
        }
    }
}
