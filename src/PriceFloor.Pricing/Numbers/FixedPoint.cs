namespace PriceFloor.Pricing.Numbers;

/// <summary>
/// A number from 0 to below 16 in 124 binary places: what the series of <see cref="Powers"/> add up in, several times as fast as in
/// <c>decimal</c> and with more places, so the <c>decimal</c> that comes out is exact to its last digit but one.
/// </summary>
internal readonly record struct FixedPoint
{
    private const int Places = 124, WholeBits = 128 - Places;

    private static readonly UInt128 s_one = UInt128.One << Places;

    /// <summary>10^28: <c>decimal</c> has no more decimals.</summary>
    private static readonly UInt128 s_decimals = (UInt128)10_000_000_000_000_000_000 * 1_000_000_000;

    /// <summary>2^216 / 10^28.</summary>
    private static readonly UInt128 s_perDecimal = PowerOfTwoOver(216, s_decimals);

    private readonly UInt128 _bits;

    private FixedPoint(UInt128 bits) => _bits = bits;

    /// <summary>1, 1/3, 1/5, ...: of z^2 they are the logarithm of (1 + z) / (1 - z) over 2z.</summary>
    public static FixedPoint[] OddReciprocals { get; } = [.. Enumerable.Range(0, 38).Select(n => new FixedPoint(s_one / (UInt128)((2 * n) + 1)))];

    /// <summary>1, 1, 1/2, 1/6, ...: they are the exponential.</summary>
    public static FixedPoint[] FactorialReciprocals { get; } = Factorials(32);

    /// <summary>A number from 0 to 1 with at most 28 decimals.</summary>
    public static FixedPoint Of(decimal number)
    {
        Span<int> parts = stackalloc int[4];
        decimal.GetBits(number, parts);
        var digits = new UInt128((uint)parts[2], ((ulong)(uint)parts[1] << 32) | (uint)parts[0]);
        for (var scale = number.Scale; scale < 28; scale++)
            digits *= 10;
        return new FixedPoint(High(digits << 32, s_perDecimal) << WholeBits);
    }

    /// <summary>The number with 28 decimals, rounded down; below 7.9.</summary>
    public decimal Value
    {
        get
        {
            var digits = High(_bits, s_decimals << WholeBits);
            var low = (ulong)digits;
            return new decimal((int)low, (int)(low >> 32), (int)(digits >> 64), isNegative: false, 28);
        }
    }

    public static FixedPoint operator *(FixedPoint left, FixedPoint right) => new(High(left._bits, right._bits) << WholeBits);

    /// <summary>The sum of each factor times a power of x, the first with none.</summary>
    public static FixedPoint Series(FixedPoint[] factors, FixedPoint x)
    {
        var sum = factors[^1];
        for (var i = factors.Length - 2; i >= 0; i--)
            sum = new FixedPoint(factors[i]._bits + (sum * x)._bits);
        return sum;
    }

    /// <summary>Bit by bit, because the dividend has more bits than a number here.</summary>
    private static UInt128 PowerOfTwoOver(int exponent, UInt128 divisor)
    {
        var (quotient, rest) = (UInt128.Zero, UInt128.One);
        for (; exponent > 0; exponent--)
        {
            rest <<= 1;
            quotient <<= 1;
            if (rest >= divisor)
                (rest, quotient) = (rest - divisor, quotient + 1);
        }

        return quotient;
    }

    private static FixedPoint[] Factorials(int count)
    {
        var factors = new FixedPoint[count];
        factors[0] = new FixedPoint(s_one);
        for (var n = 1; n < count; n++)
            factors[n] = new FixedPoint(factors[n - 1]._bits / (UInt128)n);
        return factors;
    }

    /// <summary>The upper half of a product of twice the bits.</summary>
    private static UInt128 High(UInt128 left, UInt128 right)
    {
        ulong leftHigh = (ulong)(left >> 64), leftLow = (ulong)left, rightHigh = (ulong)(right >> 64), rightLow = (ulong)right;
        var (one, other) = (ulong.BigMul(leftHigh, rightLow), ulong.BigMul(leftLow, rightHigh));
        var middle = (UInt128)(ulong)one + (ulong)other + (ulong)(ulong.BigMul(leftLow, rightLow) >> 64);
        return ulong.BigMul(leftHigh, rightHigh) + (one >> 64) + (other >> 64) + (middle >> 64);
    }
}
