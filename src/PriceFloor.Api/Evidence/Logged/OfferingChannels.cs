using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Evidence.Logged;

/// <summary>The channels of a profile's currency, on which its designs may be offered, and the events of those that are stalls.</summary>
internal sealed class OfferingChannels
{
    private readonly Dictionary<string, Stored<Channel>> _channels;
    private readonly Dictionary<string, IReadOnlyList<DateOnly>> _events = new(StringComparer.Ordinal);

    private OfferingChannels(Dictionary<string, Stored<Channel>> channels)
    {
        _channels = channels;
        Keys = [.. channels.Keys.Order(StringComparer.Ordinal)];
        Channels = [.. Keys.Select(key => new KeyValuePair<string, Channel>(key, channels[key].Document))];
    }

    /// <summary>Their keys, in order.</summary>
    public IReadOnlyList<string> Keys { get; }

    public IReadOnlyList<KeyValuePair<string, Channel>> Channels { get; }

    /// <summary>All events as one text: equal texts are equal events.</summary>
    public string SaidOfEvents => string.Join(';', _events.OrderBy(stall => stall.Key, StringComparer.Ordinal)
        .Select(stall => $"{stall.Key}={string.Join(',', stall.Value.Select(day => day.DayNumber))}"));

    public static async ValueTask<OfferingChannels> Of(LoggedQuestion question, Stored<CostProfile> profile)
    {
        var offering = new OfferingChannels(question.Catalogue.Channels.Where(channel => channel.Sound?.Currency == profile.Document.Currency)
            .ToDictionary(channel => channel.Key, StringComparer.Ordinal));
        foreach (var (key, channel) in offering._channels)
            if (channel.Document.Stall is not null)
                offering._events[key] = await question.EventsOf(key);
        return offering;
    }

    /// <summary>The first day of each event of a stall, in order.</summary>
    public IReadOnlyList<DateOnly> Events(string key) => _events.GetValueOrDefault(key, []);

    /// <summary>What a design rests on: the channels that its lines name, and those on which it may be listed.</summary>
    public IReadOnlyList<NamedChannel> Named(IReadOnlyList<NamedChannel> byLines) =>
        [.. byLines, .. _channels.Values.Select(channel => new NamedChannel(channel.Key, channel))];
}
