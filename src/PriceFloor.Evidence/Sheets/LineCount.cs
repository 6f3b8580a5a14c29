namespace PriceFloor.Evidence.Sheets;

/// <summary>Lines and what they brought.</summary>
/// <param name="Lines">How many.</param>
/// <param name="Money">Pieces times price of those sold less those that came back.</param>
public readonly record struct LineCount(int Lines, decimal Money)
{
    public static LineCount operator +(LineCount one, LineCount other) => new(one.Lines + other.Lines, one.Money + other.Money);

    public static LineCount Of(IEnumerable<decimal> money)
    {
        var (lines, sum) = (0, 0m);
        foreach (var one in money)
            (lines, sum) = (lines + 1, sum + one);
        return new(lines, sum);
    }
}
