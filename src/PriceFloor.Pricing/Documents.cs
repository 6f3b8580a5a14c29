using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing;

/// <summary>How long texts and lists in documents may be.</summary>
public static class Limits
{
    public const int NameLength = 200;
    public const int KeyLength = 64;
    public const int AliasLength = 128;
    public const int Aliases = 200;
    public const int Lines = 500;
    public const int Steps = 100;
    public const int Levies = 20;
    public const int Bands = 50;
    public const int Fees = 50;

    /// <summary>A price above this is no price: 10^12.</summary>
    public const decimal HighestPrice = 1_000_000_000_000m;

    /// <summary>The least bench time of a year, in hours.</summary>
    public const decimal LeastBenchHours = 0.01m;
}

/// <summary>How often an amount is paid or received.</summary>
public enum Per { Week, Fortnight, FourWeeks, Month, Quarter, Year, Time }

/// <summary>An amount that comes round: <c>540</c> per <c>month</c>, or <c>150</c> per <c>time</c>, <c>8</c> times a year.</summary>
public interface IRecurring
{
    decimal Amount { get; }
    Per Per { get; }
    decimal? Times { get; }
}

public static class Annual
{
    /// <summary>
    /// The amount over twelve full months: bills run all 52 weeks, only work stops for holidays.
    /// 540 a month = 6,480 a year; 150 a time, 8 times = 1,200 a year.
    /// </summary>
    public static decimal Amount(this IRecurring line) => line.Amount * TimesAYear(line);

    public static decimal TimesAYear(this IRecurring line) => line.Per switch
    {
        Per.Week => 52,
        Per.Fortnight => 26,
        Per.FourWeeks => 13,
        Per.Month => 12,
        Per.Quarter => 4,
        Per.Time => line.Times ?? 0,
        _ => 1,
    };
}

/// <summary>One listed price: what a shop asks for one design on one channel today.</summary>
public sealed record ListedPrice
{
    /// <summary>The listed price, in the channel's currency and with its decimals.</summary>
    /// <example>58.00</example>
    [Price(Above = true)]
    public required decimal Price { get; init; }

    /// <summary>ISO 4217 code; must be the channel's own. Absent: the channel's.</summary>
    /// <example>USD</example>
    [MaxLength(3)]
    public string? Currency { get; init; }
}
