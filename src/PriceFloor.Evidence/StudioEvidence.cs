using PriceFloor.Evidence.Findings;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Orders;
using PriceFloor.Evidence.Shelves;

namespace PriceFloor.Evidence;

/// <summary>All findings of a log.</summary>
public sealed class StudioEvidence
{
    private readonly Func<IReadOnlyList<ChannelEvidence>> _channels;

    private StudioEvidence(EvidenceChoices choices, Func<IReadOnlyList<ChannelEvidence>> channels) => (Choices, _channels) = (choices, channels);

    public EvidenceChoices Choices { get; }

    /// <summary>Designs with a line, by sku.</summary>
    public required IReadOnlyList<DesignEvidence> Designs { get; init; }

    /// <summary>Channels with an order, by key; found when they are asked for.</summary>
    public IReadOnlyList<ChannelEvidence> Channels => field ??= _channels();

    /// <summary>Null where no profile is asked about.</summary>
    public required ProfileEvidence? Profile { get; init; }

    /// <summary>Bench entries that were not counted as made, because movements say what was made that day.</summary>
    public required IReadOnlyList<BenchEntry> MadeTwice { get; init; }

    public DateOnly? Newest { get; init; }

    /// <summary>The fewest designs that together bring 70 % of the contribution, largest first.</summary>
    public IReadOnlyList<string> Carriers => Carrying.Of(Designs.Select(design => new DesignContribution(design.Known.Sku, Contribution(design))));

    /// <summary>Contribution of a design as found; 0 where it sold nothing.</summary>
    public static decimal Contribution(DesignEvidence design) => design is { Take: { } take, AsFound.Found: { } piece } ? take.Contribution(piece)
        : 0;

    /// <summary>Its share of all designs' contribution; null where they bring nothing.</summary>
    public decimal? ShareOfContribution(DesignEvidence design) => Designs.Sum(Contribution) is > 0 and var all ? Contribution(design) / all : null;

    /// <summary>Its share of the bench hours of what was sold; null where nothing was.</summary>
    public decimal? ShareOfHours(DesignEvidence design) => Designs.Sum(Hours) is > 0 and var all ? Hours(design) / all : null;

    /// <summary>The findings of lines.</summary>
    /// <param name="movements">The movements.</param>
    /// <param name="bench">The bench entries.</param>
    /// <param name="sources">What is known of their sources.</param>
    /// <param name="profile">The profile that is asked about; null: none.</param>
    /// <param name="known">The documents.</param>
    /// <param name="choices">What is asked.</param>
    public static StudioEvidence Of(IReadOnlyList<Movement> movements, IReadOnlyList<BenchEntry> bench, IReadOnlyList<LogSource> sources,
        CostProfile? profile, KnownStudio known, EvidenceChoices choices)
    {
        var lines = new LogLines(movements, bench, sources, choices);
        var orders = OrderBook.Of(lines.Movements, known.Channel);
        var logs = known.Designs.OrderBy(design => design.Sku, StringComparer.Ordinal)
            .Select(design => new Logged(design, lines.Of(design, orders)))
            .Where(design => design.Log.Movements.Count + design.Log.Bench.Count > 0).ToList();
        var good = GoodOf(logs, known);
        var designs = logs.ConvertAll(design => DesignEvidence.Of(design.Known, design.Log, choices, good(design.Known)));
        return new StudioEvidence(choices, () => ChannelsOf(orders, lines, known, choices))
        {
            Designs = designs,
            Profile = profile is null ? null
                : ProfileEvidence.Of(profile, ShelfTimes.Of(designs.Select(design => design.Shelf)), lines.WholeDays, choices),
            MadeTwice = lines.MadeTwice,
            Newest = lines.Newest,
        };
    }

    /// <summary>What became of the pieces of one design, without anything else that its lines say.</summary>
    /// <param name="sku">Its key.</param>
    /// <param name="design">The design.</param>
    /// <param name="movements">Its movements.</param>
    /// <param name="bench">Its bench entries.</param>
    /// <param name="sources">What is known of their sources.</param>
    /// <param name="choices">What is asked.</param>
    public static ShelfHistory ShelfOf(string sku, Design design, IReadOnlyList<Movement> movements, IReadOnlyList<BenchEntry> bench,
        IReadOnlyList<LogSource> sources, EvidenceChoices choices) =>
        ShelfHistory.Of(new LogLines(movements, bench, sources, choices).MovementsOf(sku, design).Lines, choices.To);

    /// <summary>Designs of one profile are alike.</summary>
    private static Func<KnownDesign, GoodPriors> GoodOf(IEnumerable<Logged> designs, KnownStudio known)
    {
        if (known.Good is { } given)
            return _ => given;
        var byProfile = designs.GroupBy(design => design.Known.Stored.Design.Profile ?? "", StringComparer.Ordinal).ToDictionary(
            profile => profile.Key,
            profile => GoodPriors.Of(profile.Select(design => GoodLots.Of(design.Known.Stored.Design, design.Log.Bench))),
            StringComparer.Ordinal);
        return design => byProfile[design.Stored.Design.Profile ?? ""];
    }

    /// <summary>Bench hours of what a design sold; 0 where it sold nothing.</summary>
    public static decimal Hours(DesignEvidence design) => design is { Take: { } take, AsFound.Found: { } piece } ? take.Hours(piece) : 0;

    private static List<ChannelEvidence> ChannelsOf(OrderBook orders, LogLines lines, KnownStudio known, EvidenceChoices choices) =>
        [.. orders.Orders.GroupBy(order => order.Channel).OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => ChannelOf(group.Key, [.. group], known, choices) with { LeftOut = LeftOut(lines, group.Key, known) })];

    private static ChannelEvidence ChannelOf(string key, IReadOnlyList<SoldOrder> orders, KnownStudio known, EvidenceChoices choices)
    {
        var stored = known.Channel(key)!;
        var found = ChannelFindings.Of(stored, orders, line => line.Listed ?? known.Listed(line.Sku, key, line.On), choices);
        return new ChannelEvidence(key, stored, [.. found.Select(one => one.Finding)], Found<Channel>.Draft(stored, found));
    }

    private static int LeftOut(LogLines lines, string key, KnownStudio known) => lines.Movements.Count(line =>
        line.What == MovementKind.Sold && line.Channel == key && line.Currency is { } money && money != known.Channel(key)!.Currency);

    private sealed record Logged(KnownDesign Known, LogOfDesign Log);
}
