using System.Runtime.InteropServices;

namespace PriceFloor.Evidence.Shelves;

/// <summary>Pieces made on one day.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct ShelfLot(DateOnly Made, int Pieces);
