namespace PriceFloor.Pricing.Changes;

/// <summary>
/// Whole numbers that look random and are the same on every machine: the generator SplitMix64 (Steele, Lea and Flood 2014). Seeded with 1234567,
/// its first number is 6457827717110365317.
/// </summary>
public sealed class SplitMix64(ulong seed)
{
    private ulong _state = seed;

    /// <summary>The next number of 64 bits.</summary>
    public ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            var mixed = (_state ^ (_state >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            return mixed ^ (mixed >> 31);
        }
    }

    /// <summary>A number from 0 to below <paramref name="count"/>, each equally often: the last incomplete round of 64 bits is drawn again.</summary>
    public int Below(int count)
    {
        var rounds = ulong.MaxValue - ulong.MaxValue % (ulong)count;
        var drawn = Next();
        while (drawn >= rounds)
            drawn = Next();
        return (int)(drawn % (ulong)count);
    }
}
