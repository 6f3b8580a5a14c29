using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>What evidence of a design rests on, beside the day and the caller's question.</summary>
/// <param name="Stamp">Of its lines.</param>
/// <param name="Floor">The design in its profile's year: the same object while neither changes.</param>
/// <param name="Channels">The channels that its lines name; null for one that was not there.</param>
/// <param name="Sources">What was said of the sources.</param>
internal sealed record RestsOn(long Stamp, DesignFloor Floor, IReadOnlyList<NamedChannel> Channels, string Sources)
{
    public bool IsStill(long stamp, Catalogue catalogue, DesignFloor floor, string sources)
    {
        if (stamp != Stamp || !ReferenceEquals(floor, Floor) || sources != Sources)
            return false;
        foreach (var channel in Channels)
            if (!ReferenceEquals(catalogue.Channel(channel.Key), channel.Channel))
                return false;
        return true;
    }
}

/// <summary>A channel that lines name; null where it is not stored.</summary>
internal sealed record NamedChannel(string Key, Stored<Channel>? Channel);
