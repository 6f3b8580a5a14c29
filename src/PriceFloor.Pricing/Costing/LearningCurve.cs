using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Costing;

/// <summary>
/// The unit learning curve: the k-th piece of a run takes m * ((e + k) / max(1, e))^b, b = log2(rate), e pieces made before. At 85 % and 120
/// minutes for the first, the second takes 102 and the 30th 54.06. It keeps its sums, so it is for one caller at a time.
/// </summary>
public sealed class LearningCurve(Learning learning)
{
    /// <summary>The logarithms of 1 and on: the numbers that most curves pass.</summary>
    private static readonly decimal[] s_logarithms = [0, .. Enumerable.Range(1, 255).Select(number => Powers.Ln(number))];

    private readonly decimal _madeBefore = learning.MadeBefore ?? 0;
    private readonly decimal _from = decimal.Max(1, learning.MadeBefore ?? 0);
    private readonly decimal _logarithmOfFrom = LogarithmOf(decimal.Max(1, learning.MadeBefore ?? 0));
    private readonly List<decimal> _sums = [0];
    private readonly decimal _exponent = learning.Rate is { } rate and not 1 ? Powers.Ln(rate) / Powers.Ln(2) : 0;

    /// <summary>b = log2(rate), settled: 0.85 gives -0.234465253637.</summary>
    public decimal Exponent => Rounding.Settle(_exponent);

    /// <summary>The time of the k-th piece of the run, the first is 1, over the time that the design gives.</summary>
    public decimal FactorOf(decimal piece)
    {
        var made = _madeBefore + piece;
        return _exponent == 0 || made == _from ? 1 : Rounding.Settle(Powers.Exp(_exponent * (LogarithmOf(made) - _logarithmOfFrom)));
    }

    /// <summary>The factors of the first pieces added up, the last by its fraction: of 2.5 pieces the first two and half the third.</summary>
    public decimal SumTo(decimal pieces)
    {
        if (_exponent == 0)
            return pieces;
        var whole = (int)decimal.Truncate(pieces);
        while (_sums.Count <= whole)
            _sums.Add(_sums[^1] + FactorOf(_sums.Count));
        return pieces == whole ? _sums[whole] : _sums[whole] + (pieces - whole) * FactorOf(whole + 1);
    }

    private static decimal LogarithmOf(decimal number) =>
        number < s_logarithms.Length && decimal.IsInteger(number) ? s_logarithms[(int)number] : Powers.Ln(number);
}
