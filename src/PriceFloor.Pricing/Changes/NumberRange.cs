namespace PriceFloor.Pricing.Changes;

/// <summary>
/// How far a number may be from what is stored: one time in ten it is lower than <c>low</c>, one time in ten higher than <c>high</c>, and as
/// often above as below <c>likely</c>.
/// </summary>
public sealed record NumberRange
{
    /// <summary>One time in ten the number is lower.</summary>
    /// <example>42</example>
    public required decimal Low { get; init; }

    /// <summary>As often above it as below. Absent: what is stored; 1 under <c>by</c>, 0 under <c>plus</c>.</summary>
    /// <example>46</example>
    public decimal? Likely { get; init; }

    /// <summary>One time in ten the number is higher.</summary>
    /// <example>47</example>
    public required decimal High { get; init; }
}

/// <summary>What a range says of numbers beyond its ends: one in ten lies beyond each, or they never do.</summary>
public enum RangeEnds { OneInTen, Never }
