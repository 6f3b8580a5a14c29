using System.Runtime.InteropServices;

namespace PriceFloor.Evidence.Demand;

/// <summary>One order of a design.</summary>
/// <param name="On">Its day.</param>
/// <param name="Pieces">Pieces of the design in it, at least 1.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct OrderDay(DateOnly On, int Pieces);
