namespace PriceFloor.Evidence.Demand;

/// <summary>What one piece must bring on a channel, by what a bench hour is worth. Unrounded.</summary>
public static class Margin
{
    /// <summary>v: what the piece costs. F where bench time is scarce, what its materials cost where hours would be idle.</summary>
    public static decimal Cost(UnitCost piece, Channel channel, Aim aim) => aim == Aim.ScarceHours ? new ChannelFloor(piece, channel).Floor
        : piece.Materials - piece.SecondsCredit;

    /// <summary>net(p) - (M - C) - mu*t: what one piece leaves at a price.</summary>
    public static decimal At(decimal price, UnitCost piece, Channel channel, Aim aim)
    {
        var left = Sale.Of(price, channel).Net - (piece.Materials - piece.SecondsCredit);
        return aim == Aim.ScarceHours ? left - piece.Year.PerBenchHour * new ChannelFloor(piece, channel).Hours : left;
    }
}

/// <summary>What a bench hour is worth.</summary>
public enum Aim
{
    /// <summary>Every hour would be sold otherwise: it must earn its share of the year.</summary>
    ScarceHours,

    /// <summary>The hours would be idle: they cost nothing more.</summary>
    IdleHours,
}
