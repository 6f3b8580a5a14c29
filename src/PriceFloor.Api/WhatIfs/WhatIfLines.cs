using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.PriceLists;

namespace PriceFloor.Api.WhatIfs;

/// <summary>Every design of a profile on every channel of its currency, now and in each scenario.</summary>
internal sealed class WhatIfLines
{
    private readonly WholeCatalogue _now;
    private readonly IReadOnlyList<WholeCatalogue> _scenarios;
    private readonly List<Stored<Channel>> _channels;
    private readonly WhatIfList _wanted;

    private WhatIfLines(WholeCatalogue now, IReadOnlyList<WholeCatalogue> scenarios, string currency, WhatIfList wanted)
    {
        (_now, _scenarios, _wanted) = (now, scenarios, wanted);
        _channels = [.. now.Channels.Where(channel => channel.Sound?.Currency == currency)];
    }

    /// <summary>
    /// The lines that are wanted, and those whose verdict fell in a scenario. Computed on all processors, in order.
    /// </summary>
    /// <param name="now">What is stored.</param>
    /// <param name="scenarios">What would be stored in each scenario.</param>
    /// <param name="profile">The profile.</param>
    /// <param name="wanted">Which lines are wanted.</param>
    public static (IReadOnlyList<WhatIfLine> Lines, IReadOnlyList<WhatIfLine> Fallen) Of(WholeCatalogue now, IReadOnlyList<WholeCatalogue> scenarios,
        Stored<CostProfile> profile, WhatIfList wanted)
    {
        var lines = new WhatIfLines(now, scenarios, profile.Document.Currency, wanted);
        var designs = now.Designs.Where(design => design.Sound?.Profile == profile.Key).ToList();
        var (kept, fallen) = (new List<WhatIfLine>(), new List<WhatIfLine>());
        foreach (var line in designs.AsParallel().AsOrdered().SelectMany(lines.Of))
        {
            if (Enumerable.Range(0, scenarios.Count).Any(line.HasFallen))
                fallen.Add(line);
            if (lines.IsWanted(line))
                kept.Add(line);
        }

        return (kept, fallen);
    }

    private List<WhatIfLine> Of(Stored<Design> design)
    {
        var listed = _now.ListedPrices(design.Key);
        var lines = new List<WhatIfLine>(_channels.Count);
        foreach (var channel in _channels)
            if (_wanted != WhatIfList.None || listed.ContainsKey(channel.Key))
                lines.Add(Of(design, channel));
        return lines;
    }

    private WhatIfLine Of(Stored<Design> design, Stored<Channel> channel)
    {
        var scenarios = new PricedDesign[_scenarios.Count];
        for (var i = 0; i < scenarios.Length; i++)
            scenarios[i] = PricedDesign.Of(_scenarios[i], _scenarios[i].Design(design.Key)!, _scenarios[i].Channel(channel.Key)!);
        return new WhatIfLine(design, channel, PricedDesign.Of(_now, design, channel), scenarios);
    }

    private bool IsWanted(WhatIfLine line) => _wanted == WhatIfList.All || (_wanted == WhatIfList.Moved && line.HasMoved);
}

/// <summary>One design on one channel.</summary>
/// <param name="Design">The design as it is stored.</param>
/// <param name="Channel">The channel as it is stored.</param>
/// <param name="Now">Its prices now.</param>
/// <param name="Scenarios">Its prices in each scenario.</param>
internal sealed record WhatIfLine(Stored<Design> Design, Stored<Channel> Channel, PricedDesign Now, IReadOnlyList<PricedDesign> Scenarios)
{
    /// <summary>Whether its floor price, target price or verdict differs in any scenario.</summary>
    public bool HasMoved => Scenarios.Any(one =>
        one.FloorPrice != Now.FloorPrice || one.TargetPrice != Now.TargetPrice || one.Verdict != Now.Verdict || one.Reason != Now.Reason);

    /// <summary>Whether the verdict on the listed price is lower in a scenario than now.</summary>
    public bool HasFallen(int scenario) => Scenarios[scenario].Verdict < Now.Verdict;

    /// <summary>If the verdict fell: the smallest allowed price that gives the old one back.</summary>
    public decimal? SuggestedIn(int scenario) => !HasFallen(scenario) ? null
        : Now.Verdict == Verdict.MeetsTarget ? Scenarios[scenario].TargetPrice : Scenarios[scenario].FloorPrice;
}
