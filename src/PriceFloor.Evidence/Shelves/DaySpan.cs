using System.Runtime.InteropServices;

namespace PriceFloor.Evidence.Shelves;

/// <summary>Days in a row.</summary>
/// <param name="From">The first.</param>
/// <param name="To">The last, not before it.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct DaySpan(DateOnly From, DateOnly To)
{
    public int Days => To.DayNumber - From.DayNumber + 1;

    /// <summary>The days that are in both; null if none is.</summary>
    public DaySpan? And(DaySpan other)
    {
        var (from, to) = (From > other.From ? From : other.From, To < other.To ? To : other.To);
        return from <= to ? new DaySpan(from, to) : null;
    }
}
