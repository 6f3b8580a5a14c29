using PriceFloor.Pricing.Documents;

namespace PriceFloor.Pricing.Planning;

/// <summary>The lines of a plan that are sold at the stalls of one channel.</summary>
internal sealed record StallLines(Stall Stall, IReadOnlyList<int> Lines)
{
    /// <summary>Each channel with a stall, in the order of its first line.</summary>
    public static IReadOnlyList<StallLines> Of(IEnumerable<Channel> lines) =>
    [
        .. lines.Select((channel, i) => (Channel: channel, Line: i)).Where(line => line.Channel.Stall is not null)
            .GroupBy(line => line.Channel).Select(channel => new StallLines(channel.Key.Stall!, [.. channel.Select(line => line.Line)])),
    ];
}
