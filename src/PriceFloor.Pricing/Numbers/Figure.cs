using System.Runtime.CompilerServices;

namespace PriceFloor.Pricing.Numbers;

/// <summary>A figure that is its value and nothing else.</summary>
internal readonly record struct Figure(decimal Value) : IFigure<Figure>
{
    public static bool IsWritten => false;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Figure(decimal number) => new(number);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Figure operator +(Figure left, Figure right) => new(left.Value + right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Figure operator -(Figure left, Figure right) => new(left.Value - right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Figure operator *(Figure left, Figure right) => new(left.Value * right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Figure operator /(Figure left, Figure right) => new(left.Value / right.Value);

    public static Figure Max(Figure left, Figure right) => new(decimal.Max(left.Value, right.Value));

    public static Figure Min(Figure left, Figure right) => new(decimal.Min(left.Value, right.Value));

    public static Figure RoundUp(Figure figure, int decimals) => new(Rounding.Up(figure.Value, decimals));

    public static Figure RoundDown(Figure figure, int decimals) => new(Rounding.Down(figure.Value, decimals));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Figure Named(string symbol, Figure figure) => figure;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Figure Named(string symbol, int number, Figure figure) => figure;
}
