namespace PriceFloor.Api.Pictures;

/// <summary>Maps amounts between two values to positions between two others: 0 to 200 over 400 pixels puts 58 at 116.</summary>
public sealed class Scale(decimal least, decimal most, decimal start, decimal end)
{
    private readonly decimal _span = most > least ? most - least : 1;

    public decimal Most => most;

    public decimal At(decimal value) => start + (value - least) / _span * (end - start);

    /// <summary>The round amounts on the scale: multiples of 1, 2 or 5 times a power of ten.</summary>
    public IEnumerable<decimal> Ticks(int about)
    {
        var step = NiceStep(_span / about);
        for (var tick = Rounding.Up(least / step, 0) * step; tick <= most; tick += step)
            yield return Rounding.Trim(tick);
    }

    /// <summary>The next 1, 2 or 5 times a power of ten that is at least this: 23.5 becomes 50.</summary>
    public static decimal NiceStep(decimal least)
    {
        var power = 1m;
        while (power * 10 <= least)
            power *= 10;
        while (power > least && power > 0.000001m)
            power /= 10;
        return power >= least ? power : power * 2 >= least ? power * 2 : power * 5 >= least ? power * 5 : power * 10;
    }
}
