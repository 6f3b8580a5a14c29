using System.Globalization;
using System.Numerics;

namespace PriceFloor.Pricing.Tests.ExactReckoning;

/// <summary>Whole-number fractions: nothing is ever rounded, so the library's decimals can be held against them.</summary>
public readonly record struct Fraction(BigInteger Top, BigInteger Bottom)
{
    public static Fraction Of(decimal value)
    {
        var text = value.ToString(CultureInfo.InvariantCulture);
        var decimals = text.Contains('.', StringComparison.Ordinal) ? text.Length - text.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        return new Fraction(BigInteger.Parse(text.Replace(".", "", StringComparison.Ordinal), CultureInfo.InvariantCulture),
            BigInteger.Pow(10, decimals)).Reduced();
    }

    public static implicit operator Fraction(decimal value) => Of(value);

    public static Fraction operator +(Fraction a, Fraction b) => new Fraction(a.Top * b.Bottom + b.Top * a.Bottom, a.Bottom * b.Bottom).Reduced();

    public static Fraction operator -(Fraction a, Fraction b) => a + new Fraction(-b.Top, b.Bottom);

    public static Fraction operator *(Fraction a, Fraction b) => new Fraction(a.Top * b.Top, a.Bottom * b.Bottom).Reduced();

    public static Fraction operator /(Fraction a, Fraction b) =>
        (b.Top.Sign < 0 ? new Fraction(-a.Top * b.Bottom, -a.Bottom * b.Top) : new Fraction(a.Top * b.Bottom, a.Bottom * b.Top)).Reduced();

    public static bool operator <(Fraction a, Fraction b) => a.Top * b.Bottom < b.Top * a.Bottom;

    public static bool operator >(Fraction a, Fraction b) => b < a;

    public static bool operator <=(Fraction a, Fraction b) => !(b < a);

    public static bool operator >=(Fraction a, Fraction b) => !(a < b);

    public static Fraction Max(Fraction a, Fraction b) => a > b ? a : b;

    public static Fraction Min(Fraction a, Fraction b) => a < b ? a : b;

    /// <summary>Half-even to twelve decimals, as every comparison and rounding of the model starts.</summary>
    public Fraction Settled()
    {
        var scaled = Top * BigInteger.Pow(10, 12);
        var down = FloorDivide(scaled, Bottom);
        var twice = 2 * (scaled - down * Bottom);
        var up = twice > Bottom || (twice == Bottom && !down.IsEven);
        return new Fraction(down + (up ? 1 : 0), BigInteger.Pow(10, 12)).Reduced();
    }

    public Fraction Up(int decimals) => Whole(this, decimals, (top, bottom) => -FloorDivide(-top, bottom));

    public Fraction Down(int decimals) => Whole(this, decimals, FloorDivide);

    /// <summary>Half away from zero.</summary>
    public Fraction Nearest(int decimals) => Whole(this, decimals, (top, bottom) => top.Sign * ((2 * BigInteger.Abs(top) + bottom) / (2 * bottom)));

    private static Fraction Whole(Fraction value, int decimals, Func<BigInteger, BigInteger, BigInteger> round)
    {
        var settled = value.Settled();
        var unit = BigInteger.Pow(10, decimals);
        return new Fraction(round(settled.Top * unit, settled.Bottom), unit).Reduced();
    }

    private static BigInteger FloorDivide(BigInteger a, BigInteger b) => BigInteger.DivRem(a, b, out var rest) - (rest.Sign < 0 ? 1 : 0);

    private Fraction Reduced()
    {
        var common = BigInteger.GreatestCommonDivisor(Top, Bottom);
        return new Fraction(Top / common, Bottom / common);
    }
}
