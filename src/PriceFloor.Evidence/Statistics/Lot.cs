using System.Runtime.InteropServices;

namespace PriceFloor.Evidence.Statistics;

/// <summary>Pieces that stood or fell together: a load of a kiln, an order.</summary>
/// <param name="Pieces">n: how many, at least 1.</param>
/// <param name="Counted">k: of these, how many count; 0 to n.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Lot(long Pieces, long Counted);
