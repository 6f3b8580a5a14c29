namespace PriceFloor.Pricing.Documents;

/// <summary>An amount that comes round: <c>540</c> per <c>month</c>, or <c>150</c> per <c>time</c>, <c>8</c> times a year.</summary>
public interface IRecurring
{
    decimal Amount { get; }
    Per Per { get; }
    decimal? Times { get; }
}

/// <summary>How often an amount is paid or received.</summary>
public enum Per { Week, Fortnight, FourWeeks, Month, Quarter, Year, Time }
