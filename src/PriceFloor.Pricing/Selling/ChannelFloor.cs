using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// What one piece must bring in on one channel, its selling included. A floor of 60.00, and 12 minutes of packing at 30.00 an hour: 66.00. Unrounded.
/// </summary>
public readonly struct ChannelFloor
{
    private readonly ChannelFloorFormulas<Figure> _formulas;

    public ChannelFloor(UnitCost piece, Channel channel) => _formulas = new ChannelFloorFormulas<Figure>(piece, channel);

    /// <summary>t_c: hours of selling a piece.</summary>
    public decimal SellingHours => _formulas.SellingHours.Value;

    /// <summary>t + t_c: hours of making and selling a piece.</summary>
    public decimal Hours => _formulas.Hours.Value;

    /// <summary>F_c: what must reach the studio.</summary>
    public decimal Floor => _formulas.Floor.Value;
}
