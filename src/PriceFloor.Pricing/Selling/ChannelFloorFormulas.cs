using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>What a piece must bring in on one channel: an hour of selling carries the year like an hour at the bench.</summary>
internal readonly struct ChannelFloorFormulas<T> where T : IFigure<T>
{
    public ChannelFloorFormulas(UnitCost piece, Channel channel)
    {
        var benchHours = T.Named("benchHours", piece.BenchHours);
        HasSellingHours = SellingTerms.TakesTime(channel);
        SellingHours = SellingHoursOn(channel);
        Hours = HasSellingHours ? T.Named("hoursAPiece", benchHours + SellingHours) : benchHours;
        Floor = HasSellingHours
            ? T.Named("channelFloor", T.Max(0, T.Named("perBenchHour", piece.Year.PerBenchHour) * Hours
                + T.Named("materials", piece.Materials) - T.Named("secondsCredit", piece.SecondsCredit)))
            : T.Named("floor", piece.Floor);
    }

    public bool HasSellingHours { get; }

    public T SellingHours { get; }

    /// <summary>Bench and selling hours; the bench hours alone if the channel takes no selling hours.</summary>
    public T Hours { get; }

    /// <summary>The piece's own floor if the channel takes no selling hours.</summary>
    public T Floor { get; }

    /// <summary>Hours of selling a piece; nothing on a channel that takes none.</summary>
    public static T SellingHoursOn(Channel channel) => SellingTerms.TakesTime(channel) ? T.Named("sellingHours", HoursOf(channel)) : 0;

    private static T HoursOf(Channel channel)
    {
        var selling = channel.Selling;
        var hours = ((T)selling.MinutesPerOrder / channel.PiecesPerOrder + selling.MinutesPerPiece) / 60;
        return channel.Stall is { Hours: > 0 } stall ? hours + (T)stall.Hours / stall.Pieces : hours;
    }
}
