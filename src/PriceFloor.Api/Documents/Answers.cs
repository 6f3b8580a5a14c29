namespace PriceFloor.Api.Documents;

/// <summary>Values that every computed answer uses.</summary>
public static class Answers
{
    /// <summary>Up to four decimals: hours and days.</summary>
    public static decimal Hours(decimal value) => Rounding.Trim(Rounding.Nearest(value, 4));

    /// <summary>Up to six decimals: shares and rates.</summary>
    public static decimal Ratio(decimal value) => Rounding.Trim(Rounding.Nearest(value, 6));

    /// <summary>No intermediate cache may keep an answer for somebody else, or return it without asking again.</summary>
    public static void ForThisCallerOnly(HttpContext context) => context.Response.Headers.CacheControl = "private, no-cache";
}
