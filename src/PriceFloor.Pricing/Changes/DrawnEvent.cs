using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Changes;

/// <summary>Something that happens in some draws and not in others: a year closes, a price carries its share.</summary>
public sealed class DrawnEvent
{
    private const int Blocks = 8;

    private readonly int[] _happened = new int[Blocks];
    private readonly int[] _draws = new int[Blocks];

    /// <summary>Counts one draw.</summary>
    /// <param name="draw">Its number among all draws.</param>
    /// <param name="happens">Whether it happens there.</param>
    public void Count(int draw, bool happens)
    {
        _draws[draw % Blocks]++;
        _happened[draw % Blocks] += happens ? 1 : 0;
    }

    /// <summary>The share of draws in which it happens. Unrounded.</summary>
    public decimal Share => (decimal)_happened.Sum() / _draws.Sum();

    /// <summary>
    /// How far the share may be from what endless draws would give, from 8 blocks of draws: the root of the sum of (block - mean) squared over
    /// 8 x 7. The even spread of the draws makes it smaller than that. Unrounded.
    /// </summary>
    public decimal StandardError
    {
        get
        {
            var blocks = _happened.Zip(_draws, (happened, draws) => (decimal)happened / draws).ToList();
            var mean = blocks.Sum() / Blocks;
            return SquareRoot.Of(blocks.Sum(block => (block - mean) * (block - mean)) / (Blocks * (Blocks - 1)));
        }
    }
}
