namespace PriceFloor.Pricing.Numbers;

/// <summary>
/// A number in a formula. Each formula of the model is written once, for any figure: with <see cref="Figure"/> it gives the value and costs
/// what <c>decimal</c> costs, with <see cref="WrittenFigure"/> it gives the value and the text of its line in the workings.
/// </summary>
internal interface IFigure<T> where T : IFigure<T>
{
    decimal Value { get; }

    /// <summary>Whether the text is kept too, so that terms that come to nothing must not be skipped.</summary>
    static abstract bool IsWritten { get; }

    static abstract implicit operator T(decimal number);

    static abstract T operator +(T left, T right);

    static abstract T operator -(T left, T right);

    static abstract T operator *(T left, T right);

    static abstract T operator /(T left, T right);

    static abstract T Max(T left, T right);

    static abstract T Min(T left, T right);

    /// <summary>As <see cref="Rounding.Up"/>, less the written decimals.</summary>
    static abstract T RoundUp(T figure, int decimals);

    /// <summary>As <see cref="Rounding.Down"/>, less the written decimals.</summary>
    static abstract T RoundDown(T figure, int decimals);

    /// <summary>Gives a figure the symbol by which formulas call it from then on.</summary>
    static abstract T Named(string symbol, T figure);

    /// <summary>The same with a number behind: fee 1, fee 2.</summary>
    static abstract T Named(string symbol, int number, T figure);
}
