using System.Runtime.InteropServices;

namespace PriceFloor.Evidence.Statistics;

/// <summary>Pieces that were as old when something ended their time on the shelf, or that old and still there.</summary>
/// <param name="Days">Whole days since they were made, at least 0.</param>
/// <param name="End">What ended it.</param>
/// <param name="Pieces">How many.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ShelfTime(int Days, ShelfEnd End, int Pieces = 1);
