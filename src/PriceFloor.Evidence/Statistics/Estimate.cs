namespace PriceFloor.Evidence.Statistics;

/// <summary>A figure and how sure it is.</summary>
/// <param name="Value">The figure.</param>
/// <param name="Low">The lower end of its interval; null where too little was seen for one.</param>
/// <param name="High">The upper end.</param>
public readonly record struct Estimate(decimal Value, decimal? Low, decimal? High)
{
    /// <summary>Decimals of shares, rates and probabilities.</summary>
    public const int ShareDecimals = 4;

    /// <summary>Decimals of minutes.</summary>
    public const int MinuteDecimals = 2;

    /// <summary>The two shares that cut a level out of the middle: 0.9 leaves 0.05 and 0.95.</summary>
    internal static (double Low, double High) Ends(decimal level) => ((double)((1 - level) / 2), (double)((1 + level) / 2));
}
