namespace PriceFloor.Evidence.Sheets;

/// <summary>What fields of a line may be; beyond it is a slip of the pen.</summary>
public static class LogRanges
{
    /// <summary>Pieces of one line.</summary>
    public const int MostPieces = 1_000_000;

    /// <summary>Minutes of one batch: ten weeks without a pause.</summary>
    public const int MostMinutes = 100_000;

    /// <summary>Decimals of minutes.</summary>
    public const int MinuteDecimals = 2;

    /// <summary>An amount of a line: 10^12, as for prices.</summary>
    public const decimal MostMoney = Limits.HighestPrice;

    /// <summary>The longest ref, order, serial, and names of stalls and steps.</summary>
    public const int MostText = 200;

    /// <summary>The years that a line may be of.</summary>
    private const int FirstYear = 1970, LastYear = 2199;

    /// <summary>Lines of one request.</summary>
    public const int MostLines = 200_000;

    /// <summary>Whether an amount is none, or one that can be.</summary>
    internal static bool Fits(decimal? amount) => amount is null or (>= 0 and <= MostMoney);

    /// <summary>Whether a day is of a year in which somebody may have sold something.</summary>
    internal static bool Fits(DateOnly day) => day.Year is >= FirstYear and <= LastYear;

    /// <summary>Whether a text is none, or short enough.</summary>
    internal static bool Fits(string? text) => text is null || text.Length <= MostText;
}
