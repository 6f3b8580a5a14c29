namespace PriceFloor.Pricing.Numbers;

/// <summary>The square root in <c>decimal</c>, the same on every machine. Of 2: 1.414213562373095048801688724.</summary>
public static class SquareRoot
{
    /// <summary>The root of a number of at least zero, by Newton's method, to about 28 digits.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is below zero.</exception>
    public static decimal Of(decimal value)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(value);
        if (value == 0)
            return 0;
        var (number, scale) = (value, 1m);
        for (; number < 1; number *= 100)
            scale /= 10;
        for (; number >= 100; number /= 100)
            scale *= 10;
        return OfOneTo100(number) * scale;
    }

    /// <summary>Every guess after the first lies above the root until the last digit, so the first that does not fall is the root.</summary>
    private static decimal OfOneTo100(decimal number)
    {
        for (var guess = 10m; ;)
        {
            var next = (guess + number / guess) / 2;
            if (next >= guess)
                return guess;
            guess = next;
        }
    }
}
