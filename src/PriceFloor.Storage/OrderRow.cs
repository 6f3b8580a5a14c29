using System.Runtime.InteropServices;

namespace PriceFloor.Storage;

/// <summary>That a movement is of an order.</summary>
/// <param name="Position">Its position.</param>
/// <param name="Design">Number of the design.</param>
/// <param name="OrderMark">The order (<see cref="LogMarks.OfOrder"/>), as a number.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct OrderRow(long Position, long Design, ulong OrderMark);
